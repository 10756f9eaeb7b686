using ProcScript.Analysis.Drafting;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Tests.Cases;

/// <summary>Every case with notes or a list of parts: its source is what is drafted of them.</summary>
public sealed class DraftCaseTests
{
    private const string Drafted = "drafted.proc";

    public static TheoryData<string> Lists => [.. Case.FilesBelow(Checkout.Cases).Where(Case.IsList)];

    [Theory]
    [MemberData(nameof(Lists))]
    public void The_source_is_as_drafted(string list)
    {
        var path = Path.Combine(Checkout.Cases, list);
        var text = File.ReadAllText(path);
        var name = Path.GetFileName(list);
        var source = name == "parts.csv" ? SourceDraft.OfParts(PartsFile.Read(text), "unit", name) : SourceDraft.OfNotes(text, "unit", name);

        Assert.NotNull(source);
        Expected.Compare(Path.Combine(Path.GetDirectoryName(path)!, Drafted), source.Text);
    }
}
