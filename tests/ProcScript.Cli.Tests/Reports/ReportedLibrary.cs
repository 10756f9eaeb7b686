using ProcScript.Cli.Tests.Malformed;

namespace ProcScript.Cli.Tests.Reports;

/// <summary>A repository whose library, in a folder of it, has findings of every sort, in files and texts with awkward letters.</summary>
internal sealed class ReportedLibrary : IDisposable
{
    public const string AwkwardFile = "50%, a:b/pümp #1.proc";

    private const string Allowed =
        """
        tool socket_16 "16 mm socket" { size 16 mm }
        fastener strap_bolt "strap bolt" { thread M10x1.5  drive socket_16 }
        machine tank "tank" {
          part strap "strap" {
            // proc: allow PRC5001 until 2999-12-31 because "It is \"hand\" tight."
            held by 2 strap_bolt as strap_bolts
          }
        }
        procedure strap_off "Take the strap off" on tank {
          goal remove strap
          stage "Strap" { undo strap_bolts  remove strap }
        }

        """;

    public ReportedLibrary()
    {
        Disk.WithFolder(".git").With("shop/procscript.json", """{ "severities": { "PRC6xxx": "off" } }""")
            .With("shop/machine.proc", Sample.Machine)
            .With("shop/good.proc", "use \"machine.proc\"\n" + Sample.Procedure)
            .With("shop/slips.proc", "use \"machine.proc\"\nprocedure q \"Take it off: 100 %\" on m { stage \"All\" { remove cover } }\n")
            .With("shop/" + AwkwardFile, "use \"../machine.proc\"\nprocedure r \"R\" on m { stage \"All\" { undo cover_bolts  remove cuver } }\n")
            .With("shop/allowed.proc", Allowed)
            .With("shop/control.proc", "tool a \"A \u0001\"\n")
            .With("shop/warned.proc", Sample.Text.Replace("machine m ", "machine w ", StringComparison.Ordinal).Replace(" on m ", " on w ", StringComparison.Ordinal).Replace("drive socket_13", "", StringComparison.Ordinal));
    }

    public TemporaryFolder Disk { get; } = new();

    public Task<CliRun> CheckAsync(params string[] options) => CliRun.AtAsync(Disk.Path, ["check", "shop", .. options]);

    public void Dispose() => Disk.Dispose();
}
