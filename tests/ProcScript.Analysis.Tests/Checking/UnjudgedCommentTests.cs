using ProcScript.Analysis.Checking;
using ProcScript.Analysis.Reports;
using ProcScript.Model;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;

namespace ProcScript.Analysis.Tests.Checking;

/// <summary>A comment that silences nothing is only told where all that it may speak of was judged.</summary>
public sealed class UnjudgedCommentTests
{
    private const string Comment = "// proc: allow PRC5001 because \"Set by feel.\"";

    private const string Machine =
        "clip pin \"pin\"\nmachine press \"Press\" {\n  part guard \"guard\" {\n    " + Comment + "\n    held by 4 pin as guard_pins\n  }\n}\n";

    private const string Job = "use \"machine.proc\"\nprocedure guard_off \"Take the guard off\" on press {\n  stage \"Guard\" { release guard_pins  remove guard }\n}\n";

    private const string Other = "clip tab \"tab\"\nmachine shelf \"Shelf\" { part board \"board\" { held by 1 tab as board_tab } }\n"
        + "procedure board_off \"Take the board off\" on shelf { stage \"Board\" { release board_tab  remove board } }\n";

    [Fact]
    public void It_is_told_where_all_is_proven()
    {
        var (state, codes) = Check(Job, Other);

        Assert.Equal(SuppressionState.Unused, state);
        Assert.Equal(["PRC7002"], codes);
    }

    [Theory]
    [InlineData("release guard_pins  ", "", "PRC3001")]
    [InlineData("remove guard", "remove guardd", "PRC1101")]
    [InlineData("stage \"Guard\" {", "stage \"Guard\"", "PRC1001")]
    [InlineData("use \"machine.proc\"", "use \"machin.proc\"", "PRC1104")]
    [InlineData("use \"machine.proc\"\n", "", "PRC1101")]
    public void It_is_left_alone_while_a_user_is_not_understood_or_not_proven(string old, string fresh, string code)
    {
        var (state, codes) = Check(Job.Replace(old, fresh, StringComparison.Ordinal), Other);

        Assert.Equal(SuppressionState.NotJudged, state);
        Assert.Contains(code, codes);
        Assert.DoesNotContain("PRC7002", codes);
    }

    [Fact]
    public void A_text_with_an_error_may_use_anything() =>
        Assert.Equal(SuppressionState.NotJudged, Check(Job, Other.Replace("part board", "prt board", StringComparison.Ordinal)).State);

    [Fact]
    public void That_another_machine_has_a_procedure_that_is_not_proven_is_no_matter() =>
        Assert.Equal(SuppressionState.Unused, Check(Job, Other.Replace("release board_tab  ", "", StringComparison.Ordinal)).State);

    [Fact]
    public void Of_a_library_that_is_read_in_part_nobody_knows_the_users()
    {
        var report = LibraryCheck.Run(new Part(new MemorySourceStore([KeyValuePair.Create("machine.proc", Machine)])), TestContext.Current.CancellationToken);

        Assert.Equal(SuppressionState.NotJudged, Assert.Single(report.Suppressions).State);
        Assert.Empty(report.Findings);
    }

    [Fact]
    public void A_check_after_a_change_says_the_same_as_a_new_one()
    {
        var (binding, memory) = (new BindingMemory(), new CheckMemory());
        foreach (var job in new[] { Job, Job.Replace("release guard_pins  ", "", StringComparison.Ordinal), Job, Job.Replace("remove guard", "remove guardd", StringComparison.Ordinal), Job })
        {
            var store = Store(job, Other);
            var again = LibraryCheck.Run(LibraryBinder.Bind(store, binding, TestContext.Current.CancellationToken), CheckSettings.Usual, memory, TestContext.Current.CancellationToken);

            Assert.Equal(LibraryCheck.Run(store, CheckSettings.Usual, TestContext.Current.CancellationToken).Suppressions, again.Suppressions);
        }
    }

    private static (SuppressionState State, IEnumerable<string> Codes) Check(string job, string other)
    {
        var report = LibraryCheck.Run(Store(job, other), TestContext.Current.CancellationToken);
        return (Assert.Single(report.Suppressions).State, [.. report.Findings.Select(reported => reported.Finding.Rule.Code)]);
    }

    private static MemorySourceStore Store(string job, string other) => new(
    [
        KeyValuePair.Create("job.proc", job),
        KeyValuePair.Create("machine.proc", Machine),
        KeyValuePair.Create("other.proc", other),
    ]);

    /// <summary>Files that somebody asked about, of a library that may have more.</summary>
    private sealed class Part(MemorySourceStore store) : ISourceStore
    {
        public IReadOnlyList<string> Paths => store.Paths;

        public SourceReading Read(string path) => store.Read(path);

        public FigureFile FindFigure(string path) => store.FindFigure(path);
    }
}
