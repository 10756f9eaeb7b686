using System.Globalization;
using System.Text;

namespace ProcScript.Bench.Libraries;

/// <summary>
/// Makes libraries of any size that check clean: one catalog, and for each machine a file of about a hundred lines and three
/// procedures of as many. The same size gives the same bytes.
/// </summary>
internal static class LibraryWriter
{
    private const int FilesOfAMachine = 4;

    /// <summary>The files by path.</summary>
    public static IEnumerable<KeyValuePair<string, string>> Write(int files)
    {
        yield return KeyValuePair.Create("catalog/metric.proc", Catalog);
        for (var file = 1; file < files; file++)
        {
            var machine = 1 + ((file - 1) / FilesOfAMachine);
            var part = (file - 1) % FilesOfAMachine;
            var folder = string.Create(CultureInfo.InvariantCulture, $"machine-{machine:D4}");
            yield return part == 0
                ? KeyValuePair.Create($"{folder}/machine.proc", MachineText.Of(machine))
                : KeyValuePair.Create($"{folder}/procedure-{part}.proc", ProcedureText.Of(machine, part));
        }
    }

    /// <summary>Writes the files below a folder and tells how many lines they have.</summary>
    public static int WriteTo(string folder, int files)
    {
        var lines = 0;
        foreach (var (path, text) in Write(files))
        {
            var full = Path.Combine(folder, path);
            Directory.CreateDirectory(Path.GetDirectoryName(full)!);
            File.WriteAllText(full, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            lines += text.Count(letter => letter == '\n');
        }

        return lines;
    }

    private const string Catalog =
        """
        tool socket_13 "13 mm socket" { size 13 mm }
        tool socket_16 "16 mm socket" { size 16 mm }
        tool ext_150 "150 mm extension"
        tool flow_meter "flow meter"
        tool trim_lever "plastic trim lever"

        fastener m8x25 "M8 × 25 flange bolt" {
          thread M8x1.25
          length 25 mm
          grade 8.8
          drive socket_13
          torque 22 ± 2 N.m
        }
        fastener m10x30 "M10 × 30 bolt" {
          thread M10x1.5
          length 30 mm
          grade 8.8
          drive socket_16
          torque 44 ± 4 N.m
        }
        clip snap_cap "snap-on bolt cap" { tool trim_lever }
        clip push_pin "push-in panel clip" {
          tool trim_lever
          spare 10 %
        }
        connector two_way "2-way connector" { release "Press the tab, pull the body, never the wires." }
        line hose "coolant hose" { tool trim_lever  seals 1 hose_seal }
        supply hose_seal "hose seal" { single use }

        """;
}
