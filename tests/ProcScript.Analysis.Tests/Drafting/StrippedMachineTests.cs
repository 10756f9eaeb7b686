using CsCheck;
using ProcScript.Analysis.Drafting;
using ProcScript.Analysis.Tests.Demo;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Tests.Drafting;

/// <summary>Takes parts out of the machines of the demo library, and has them drafted anew from the procedures.</summary>
public sealed class StrippedMachineTests
{
    private static readonly Gen<(string Folder, int Seed)> Choices = Gen.Select(Gen.OneOf<string>(DemoLibrary.MachineFolders.ToArray()), Gen.Int[0, 1 << 20]);

    [Fact]
    public void Procedures_bind_again_whatever_parts_are_taken_out() => Choices.Sample(
        choice =>
        {
            var random = new Random(choice.Seed);
            AssertBinds(choice.Folder, _ => random.Next(2) == 0);
        },
        iter: Depth.Of(40),
        threads: 1);

    [Fact]
    public void Procedures_bind_again_where_all_parts_are_gone() => Assert.All(DemoLibrary.MachineFolders, folder => AssertBinds(folder, _ => true));

    private static void AssertBinds(string folder, Func<PartSyntax, bool> goes)
    {
        var files = DemoLibrary.Files.Select(file => KeyValuePair.Create(file.Key, DemoLibrary.FolderOf(file.Key) == folder ? Stripped(file.Value, goes) : file.Value)).ToList();
        var library = LibraryBinder.Bind(new MemorySourceStore(files), TestContext.Current.CancellationToken);

        var draft = LibraryDraft.Of(library, new DraftRequest { MayChange = path => DemoLibrary.FolderOf(path) == folder });

        Assert.Empty(draft.Troubles);
        var after = draft.Files.ToDictionary(file => file.Path, file => file.After, StringComparer.Ordinal);
        var again = LibraryBinder.Bind(
            new MemorySourceStore(files.Select(file => KeyValuePair.Create(file.Key, after.GetValueOrDefault(file.Key, file.Value)))), TestContext.Current.CancellationToken);
        Assert.Empty(again.Findings.Where(finding => finding.Rule.Code is "PRC1101" && InProcedure(again, finding)).Select(finding => $"{finding.Primary.Path}: {finding.Message}"));
        Assert.All(draft.Files, file => Assert.Equal(Formatter.Format(again.Trees[file.Path]), file.After));
        Assert.Empty(LibraryDraft.Of(again, new DraftRequest { MayChange = path => DemoLibrary.FolderOf(path) == folder }).Files);
    }

    private static bool InProcedure(Library library, Finding finding) => library.Trees[finding.Primary.Path].Root.Declarations
        .OfType<ProcedureSyntax>().Any(procedure => procedure.Span.Start <= finding.Primary.Span.Start && procedure.Span.End >= finding.Primary.Span.End);

    /// <summary>The text without some of the parts that stand right in its machines.</summary>
    private static string Stripped(string text, Func<PartSyntax, bool> goes)
    {
        var tree = SyntaxTree.Parse(new SourceText("a.proc", text), TestContext.Current.CancellationToken);
        return TextEdits.Apply(text, tree.Root.Declarations.OfType<MachineSyntax>()
            .SelectMany(machine => machine.Members.OfType<PartSyntax>())
            .Where(goes)
            .Select(part => new TextEdit(new SourceSpan("a.proc", part.Span), "")));
    }
}
