using System.Globalization;
using System.Text;

namespace ProcScript.Bench.Libraries;

/// <summary>A file of about five thousand lines beside a machine's other procedures: more jobs on it than anybody would write into one.</summary>
internal static class LongFile
{
    private const int Lines = 5000;

    /// <summary>Its text: whole procedures, up to the number of lines or a little over it.</summary>
    public static string Text()
    {
        StringBuilder text = new("use \"machine.proc\"\n");
        var lines = 1;
        for (var job = 0; lines < Lines; job++)
        {
            var one = ProcedureText.Of(1, 1 + (job % 3));
            var own = one[(one.IndexOf('\n', StringComparison.Ordinal) + 1)..];
            text.Append(own.Replace("procedure job_", string.Create(CultureInfo.InvariantCulture, $"procedure job_{job}_"), StringComparison.Ordinal));
            lines += LinesIn(own);
        }

        return text.ToString();
    }

    /// <summary>How many lines a text has.</summary>
    public static int LinesIn(string text) => text.Count(letter => letter == '\n');
}
