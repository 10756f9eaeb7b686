using System.Globalization;
using CsCheck;
using ProcScript.Analysis.Tests.Reference;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Checking;

/// <summary>
/// Texts of the reference, which has every word of the language, with one letter wrong: the check says what it can, and never falls over.
/// The environment variable <c>PROCSCRIPT_TYPOS</c> says how many are tried.
/// </summary>
public sealed class TypoTests
{
    private const string File = "section.proc";

    private static readonly ReferenceExample[] Examples = [.. ReferenceExample.All.Where(example => example.Expected.Length == 0 && example.Files[File].Length > 0)];

    private static readonly Gen<(ReferenceExample Example, string Text)> Misspelt =
        from example in Gen.OneOf<ReferenceExample>(Examples)
        let text = example.Files[File]
        from at in Gen.OneOf<int>(Enumerable.Range(0, text.Length - 1).Where(at => char.IsAsciiLetter(text[at])).ToArray())
        from letter in Gen.Char['a', 'z']
        from misspelt in Gen.OneOf<string>(
            text.Remove(at, 1),
            text.Insert(at, $"{letter}"),
            text.Remove(at, 1).Insert(at, $"{letter}"),
            text.Remove(at, 1).Insert(at + 1, $"{text[at]}"))
        select (example, misspelt);

    private static long Times =>
        long.TryParse(Environment.GetEnvironmentVariable("PROCSCRIPT_TYPOS"), CultureInfo.InvariantCulture, out var times) ? times : Depth.Of(320);

    [Fact]
    public void A_text_with_a_letter_wrong_is_checked_to_its_end() => Misspelt.Sample(
        typo =>
        {
            var report = LibraryCheck.Run(new MemorySourceStore(typo.Example.Files.SetItem(File, typo.Text)));
            Assert.All(report.Findings, found => Assert.NotEmpty(found.Finding.Message));
            Assert.All(report.Procedures, procedure => Assert.Equal(procedure.IsProven, procedure.CreatePlan() is not null));
        },
        iter: Times);
}
