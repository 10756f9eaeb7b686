using System.Text.RegularExpressions;
using CsCheck;
using ProcScript.Analysis.Tests.Demo;

namespace ProcScript.Analysis.Tests.Editing;

/// <summary>What is remembered from one check to the next changes nothing but how long it takes.</summary>
public sealed partial class EditingTests
{
    /// <summary>How many sequences of edits of each library; a few in the quick run.</summary>
    private const string CountVariable = "PROCSCRIPT_EDITINGS";

    private static readonly int Count = int.TryParse(Environment.GetEnvironmentVariable(CountVariable), out var asked) ? asked : 3;

    [Slow]
    [Theory]
    [InlineData("ketterby-t40")]
    [InlineData("brindlow-c3")]
    [InlineData("torvessa-e9")]
    [InlineData("velmarra-v2")]
    public void After_any_edits_the_report_is_that_of_a_fresh_check(string machine)
    {
        var files = DemoLibrary.Files.Where(file => file.Key.StartsWith("catalog/", StringComparison.Ordinal) || file.Key.StartsWith(machine, StringComparison.Ordinal)).ToList();
        Storm(files, Count);
    }

    [Slow]
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

    [Slow]
    [Fact]
    public void An_edit_within_a_procedure_that_no_other_calls_is_a_step_that_touches_it_alone()
    {
        var library = new EditedLibrary(DemoLibrary.Files);
        var before = library.Check();
        var path = Edit(library, before, isCalled: false);
        var after = library.Check();

        Assert.True(after.Library.Step?.IsFrom(before.Library));
        Assert.Equal([path], after.Library.Step!.Files);
        Assert.Equal(
            Enumerable.Range(0, after.Procedures.Length).Where(place => !ReferenceEquals(before.Library.Procedures[place], after.Library.Procedures[place])),
            after.Library.Step.Procedures);
        Assert.All(after.Library.Step.Procedures, place => Assert.Equal(path, after.Library.Procedures[place].Declared.Path));
        Assert.NotEmpty(after.Library.Step.Procedures);
        Assert.Equal(EditedLibrary.Describe(library.CheckFresh()), EditedLibrary.Describe(after));
    }

    [Fact]
    public void An_edit_within_a_procedure_that_others_call_changes_them_too()
    {
        var library = new EditedLibrary(DemoLibrary.Files);
        var before = library.Check();
        var path = Edit(library, before, isCalled: true);
        var after = library.Check();

        Assert.Null(after.Library.Step);
        Assert.Contains(before.Procedures.Zip(after.Procedures), pair => pair.First.Procedure.Declared.Path != path && !ReferenceEquals(pair.First.Outcome, pair.Second.Outcome));
        Assert.Equal(EditedLibrary.Describe(library.CheckFresh()), EditedLibrary.Describe(after));
    }

    /// <summary>Edits a text of a procedure.</summary>
    /// <returns>The path of its file.</returns>
    private static string Edit(EditedLibrary library, LibraryReport report, bool isCalled)
    {
        var called = library.Files.Values.SelectMany(text => Calls().Matches(text).Select(call => call.Groups[1].Value)).ToHashSet();
        var procedure = report.Library.Procedures.First(one => called.Contains(one.Name) == isCalled && one.Stages.Length > 0);
        var path = procedure.Declared.Path;
        var text = library.Files[path];
        var stage = text.IndexOf("stage \"", text.IndexOf($"procedure {procedure.Name}", StringComparison.Ordinal), StringComparison.Ordinal) + "stage \"".Length;
        library.Files[path] = text.Insert(stage, "First: ");
        return path;
    }

    [GeneratedRegex(@"\bdo ([a-z0-9_]+)")]
    private static partial Regex Calls();

    private static void Storm(IReadOnlyCollection<KeyValuePair<string, string>> files, int count) => Gen.Select(RandomEdit.Any.Array[1, 10], Gen.Bool).Sample((edits, isWhole) =>
    {
        var library = new EditedLibrary(files, isWhole);
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
    }, iter: Depth.Of(count), threads: 1, print: sample => string.Join('\n', sample.Item1.Select(edit => edit.ToString()).Append(sample.Item2 ? "of a whole library" : "of a part")));
}
