using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.Model.Tests.Binding;

/// <summary>Reading files and following <c>use</c>.</summary>
public sealed class FileTests
{
    private const string Cab = """
        use "metric.proc"
        machine cab "Cab" { part trim "trim" { held by 2 pin as trim_pins } }
        procedure trim_out "Take the trim off" on cab { stage "Trim" { release trim_pins  remove trim } }
        """;

    [Theory]
    [InlineData(SourceOutcome.Unreadable, "cannot be read: access denied")]
    [InlineData(SourceOutcome.NotText, "is not a text in UTF-8: access denied")]
    [InlineData(SourceOutcome.TooLarge, "is too large to be read: access denied")]
    public void A_file_without_text_is_one_finding_and_what_it_would_declare_stays_quiet(SourceOutcome outcome, string words)
    {
        var library = Bind(new TroubledStore(("cab.proc", Cab), ("metric.proc", null)) { Outcome = outcome });
        var finding = Assert.Single(library.Findings);
        Assert.Equal("PRC1107", finding.Rule.Code);
        Assert.Equal($"`metric.proc` {words}", finding.Message);
        Assert.Equal("metric.proc", finding.Primary.Path);
        Assert.True(library.Trees.ContainsKey("metric.proc"));
        Assert.True(Assert.Single(library.Procedures).HasErrors);
    }

    [Fact]
    public void A_missing_file_is_one_finding_and_what_it_would_declare_stays_quiet()
    {
        var library = Bind(MemorySourceStore.Of("cab.proc", Cab));
        Assert.Equal(["PRC1104"], library.Findings.Select(finding => finding.Rule.Code));
        Assert.True(Assert.Single(library.Procedures).HasErrors);
    }

    [Fact]
    public void A_used_file_that_the_store_does_not_list_belongs_to_the_library()
    {
        var store = new TroubledStore(("cab.proc", Cab), ("metric.proc", "use \"deep.proc\""), ("deep.proc", "clip pin \"pin\""))
        {
            Listed = ["cab.proc"],
        };
        var library = Bind(store);
        Assert.Empty(library.Findings);
        Assert.Equal(["cab.proc", "deep.proc", "metric.proc"], library.Trees.Keys);
        Assert.Equal(["cab.proc", "deep.proc", "metric.proc"], Assert.Single(library.Procedures).Files);
    }

    [Fact]
    public void Files_in_a_round_are_bound_all_the_same()
    {
        var library = Samples.Bind(("cab.proc", Cab), ("metric.proc", "use \"cab.proc\"\nclip pin \"pin\""));
        Assert.Equal(["PRC1106"], library.Findings.Select(finding => finding.Rule.Code));
        Assert.False(Assert.Single(library.Procedures).HasErrors);
    }

    [Fact]
    public void A_chain_of_ten_thousand_files_is_followed_to_its_end()
    {
        const int Length = 10_000;
        var files = Enumerable.Range(0, Length).ToDictionary(
            index => $"f{index}.proc",
            index => index == Length - 1 ? "clip pin \"pin\"" : $"use \"f{index + 1}.proc\"");
        files["f0.proc"] += "\nmachine cab \"Cab\" { part trim \"trim\" { held by 2 pin as trim_pins } }";
        Assert.Empty(Bind(new MemorySourceStore(files)).Findings);
    }

    [Fact]
    public void Cancelling_ends_the_work() =>
        Assert.ThrowsAny<OperationCanceledException>(() => LibraryBinder.Bind(WorkedExample.Store, new CancellationToken(canceled: true)));

    private static Library Bind(ISourceStore store) => LibraryBinder.Bind(store, TestContext.Current.CancellationToken);

    /// <summary>A store whose files without content are in trouble.</summary>
    private sealed class TroubledStore(params (string Path, string? Content)[] files) : ISourceStore
    {
        public SourceOutcome Outcome { get; init; } = SourceOutcome.Unreadable;

        public string[]? Listed { get; init; }

        public IReadOnlyList<string> Paths => Listed ?? [.. files.Select(file => file.Path).Order(StringComparer.Ordinal)];

        public SourceReading Read(string path) => files.FirstOrDefault(file => file.Path == path) switch
        {
            (null, _) => new SourceReading(null, SourceOutcome.Missing),
            (_, null) => new SourceReading(null, Outcome, "access denied."),
            var (_, content) => new SourceReading(content, SourceOutcome.Read),
        };

        public FigureFile FindFigure(string path) => FigureFile.Missing;
    }
}
