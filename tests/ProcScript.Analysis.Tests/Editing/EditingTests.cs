using CsCheck;
using ProcScript.Analysis.Tests.Demo;

namespace ProcScript.Analysis.Tests.Editing;

/// <summary>What is remembered from one check to the next changes nothing but how long it takes.</summary>
public sealed class EditingTests
{
    /// <summary>How many sequences of edits of each library; a few in the quick run.</summary>
    private const string CountVariable = "PROCSCRIPT_EDITINGS";

    private static readonly int Count = int.TryParse(Environment.GetEnvironmentVariable(CountVariable), out var asked) ? asked : 3;

    [Theory]
    [InlineData("ketterby-t40")]
    [InlineData("brindlow-c3")]
    [InlineData("velmarra-v2")]
    public void After_any_edits_the_report_is_that_of_a_fresh_check(string machine)
    {
        var files = DemoLibrary.Files.Where(file => file.Key.StartsWith("catalog/", StringComparison.Ordinal) || file.Key.StartsWith(machine, StringComparison.Ordinal)).ToList();
        Storm(files, Count);
    }

    [Fact]
    public void After_any_edits_of_a_library_in_one_file_the_report_is_that_of_a_fresh_check() =>
        Storm([KeyValuePair.Create("all.proc", string.Concat(DemoLibrary.Files.Where(file => file.Key.StartsWith("catalog/", StringComparison.Ordinal) || file.Key.StartsWith("velmarra-v2", StringComparison.Ordinal))
            .Select(file => string.Join('\n', file.Value.Split('\n').Where(line => !line.StartsWith("use ", StringComparison.Ordinal))))))], Count);

    [Fact]
    public void What_an_edit_does_not_touch_is_the_same_object_as_before()
    {
        var library = new EditedLibrary(DemoLibrary.Files);
        var before = library.Check();
        var path = library.Files.Keys.First(file => file.EndsWith("velmarra-v2/pump.proc", StringComparison.Ordinal));
        library.Files[path] = library.Files[path].Replace("{\n", "{\n  // a note\n", StringComparison.Ordinal);
        var after = library.Check();

        Assert.All(before.Library.Machines.Zip(after.Library.Machines), pair => Assert.Same(pair.First, pair.Second));
        Assert.All(before.Procedures.Zip(after.Procedures), pair => Assert.Equal(pair.First.Procedure.Declared.Path != path, ReferenceEquals(pair.First.Outcome, pair.Second.Outcome)));
        Assert.Contains(after.Procedures, one => one.Procedure.Declared.Path == path);
    }

    private static void Storm(IReadOnlyCollection<KeyValuePair<string, string>> files, int count) => RandomEdit.Any.Array[1, 10].Sample(edits =>
    {
        var library = new EditedLibrary(files);
        var before = library.Files.ToDictionary();
        Assert.Equal(EditedLibrary.Describe(library.CheckFresh()), EditedLibrary.Describe(library.Check()));
        foreach (var edit in edits)
        {
            var now = library.Files.ToDictionary();
            edit.Apply(library.Files, before);
            before = now;
            var (fresh, remembered) = (EditedLibrary.Describe(library.CheckFresh()), EditedLibrary.Describe(library.Check()));
            Assert.Equal(fresh, remembered);
        }
    }, iter: count, threads: 1, print: edits => string.Join('\n', edits.Select(edit => edit.ToString())));
}
