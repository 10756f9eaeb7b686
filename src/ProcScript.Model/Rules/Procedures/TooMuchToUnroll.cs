using System.Globalization;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Rules.Procedures;

/// <summary>A text that unrolls into more than any machine or job has.</summary>
public sealed class TooMuchToUnroll : Rule
{
    /// <summary>The identity of the rule.</summary>
    public static readonly RuleInfo Id = new("PRC1117", "too-much-to-unroll", "A text that unrolls into too much", Severity.Error);

    /// <inheritdoc/>
    public override RuleInfo Info => Id;

    /// <inheritdoc/>
    public override RulePage Page { get; } = new(
        What: "`each`, `do` and parameters multiply. Here they come to more than any machine or job has, so it is a slip in a range.",
        Why: "Nobody can follow such a job, and working it out would take all memory.",
        Wrong: """
            clip pin "push pin"
            machine cab "cab" {
              each row in 1..300 {
                each seat in 1..300 {
                  part pad[row, seat] "pad {row}/{seat}"
                }
              }
            }
            """,
        Right: """
            clip pin "push pin"
            machine cab "cab" {
              each row in 1..3 {
                each seat in 1..3 {
                  part pad[row, seat] "pad {row}/{seat}"
                }
              }
            }
            """);

    /// <summary>Of a machine.</summary>
    internal static Finding Items(string machine, int most, SourceSpan place) =>
        new(Id, $"the machine `{machine}` unrolls into more than {Number(most)} lines", place, "too many values here or around it")
        {
            Help = "see whether a range is too wide",
        };

    /// <summary>Of a procedure.</summary>
    internal static Finding Lines(string procedure, int most, SourceSpan place) =>
        new(Id, $"the procedure `{procedure}` unrolls into more than {Number(most)} lines", place, "the first line too many")
        {
            Help = "see whether a range is too wide, or a procedure is done again and again",
        };

    /// <summary>Of a procedure in all its variants and choices of arguments.</summary>
    internal static Finding LinesInAll(string procedure, int most, int times, SourceSpan place) =>
        new(Id, $"the procedure `{procedure}` unrolls into more than {Number(most)} lines in its {Number(times)} variants and choices of arguments", place, "the first line too many")
        {
            Help = "list fewer values, split the machine or the procedure, or see whether a range is too wide",
        };

    /// <summary>Of the variants and the choices of arguments together.</summary>
    internal static Finding Together(string procedure, int times, int most, SourceSpan place) =>
        new(Id, $"the parameters of `{procedure}` and the options of its machine allow {Number(times)} choices together, and {Number(most)} are the most", place, "each would have to be checked")
        {
            Help = "list fewer values, or write separate procedures",
        };

    /// <summary>Of calls within calls.</summary>
    internal static Finding Calls(string procedure, int most, SourceSpan place) =>
        new(Id, $"`{procedure}` is called through more than {Number(most)} others", place, "too deep")
        {
            Help = "call it from fewer levels",
        };

    /// <summary>Of the choices of arguments.</summary>
    internal static Finding Arguments(string procedure, int most, SourceSpan place) =>
        new(Id, $"the parameters of `{procedure}` allow more than {Number(most)} choices", place, "each would have to be checked")
        {
            Help = "list fewer values, or write separate procedures",
        };

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
