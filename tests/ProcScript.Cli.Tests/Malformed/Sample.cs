namespace ProcScript.Cli.Tests.Malformed;

/// <summary>A small library in one file that checks clean, to be broken.</summary>
internal static class Sample
{
    public const string Machine =
        """
        tool socket_13 "13 mm socket" { size 13 mm }
        fastener m8 "M8 bolt" { thread M8x1.25  length 25 mm  grade 8.8  drive socket_13  torque 22 ± 2 N.m }
        connector two_way "2-way connector"
        machine m "Machine" {
          energy battery "battery" { isolate "Off."  wait 60 s  verify "Dark."  restore "On." }
          part harness "harness"
          part cover "cover" { mass 2 kg  held by 4 m8 as cover_bolts }
          part pump "pump" {
            behind cover
            held by 2 m8 as pump_bolts { at "lower flange" }
            wired by 1 two_way as pump_plug { to harness  on battery }
          }
        }

        """;

    public const string Procedure =
        """
        procedure p "Replace the pump" on m {
          goal replace pump
          stage "All" {
            isolate battery
            undo cover_bolts
            remove cover
            unplug pump_plug
            undo pump_bolts { how "The lower one first." }
            remove pump
          }
          work { replace pump }
          refit { check "It turns." needs battery live }
        }

        """;

    public const string Text = Machine + Procedure;

    /// <summary>The same with another name, to stand beside it: a library has one procedure of a name.</summary>
    public static string Another => Text.Replace("procedure p ", "procedure q ", StringComparison.Ordinal);

    /// <summary>The machine with more in it.</summary>
    public static string MachineWith(string members) => Machine[..Machine.LastIndexOf('}')] + members + "\n}\n";

    /// <summary>The procedure with other steps.</summary>
    public static string Steps(string steps) => Machine + "procedure p \"P\" on m { stage \"All\" {\n" + steps + "\n} }\n";
}
