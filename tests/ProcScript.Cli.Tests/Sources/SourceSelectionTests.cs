using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Tests.Sources;

public sealed class SourceSelectionTests : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public void A_folder_gives_its_sources_and_those_below()
    {
        _disk.With("b.proc", "").With("a/c.proc", "").With("a/notes.txt", "").With("a/D.PROC", "").With(".hidden/e.proc", "");

        var selection = Find("", ".");

        Assert.Equal(["a/D.PROC", "a/c.proc", "b.proc"], selection.Paths);
        Assert.Equal(_disk.Path, selection.Root);
    }

    [Fact]
    public void The_nearest_marked_folder_is_the_root()
    {
        _disk.With("library/procscript.json", "{}").With("library/machine/cab.proc", "").WithFolder(".git");

        var selection = Find("library/machine", "cab.proc");

        Assert.Equal(_disk["library"], selection.Root);
        Assert.Equal(["machine/cab.proc"], selection.Paths);
    }

    [Fact]
    public void A_checkout_is_a_root()
    {
        _disk.With(".git", "gitdir: elsewhere").With("library/machine/cab.proc", "");

        Assert.Equal(_disk.Path, Find("library/machine", "cab.proc").Root);
    }

    [Fact]
    public void Without_a_mark_the_current_folder_is_the_root()
    {
        _disk.With("library/machine/cab.proc", "");

        Assert.Equal(_disk["library"], Find("library", "machine/cab.proc").Root);
    }

    [Fact]
    public void Without_a_mark_and_from_elsewhere_the_nearest_common_folder_is_the_root()
    {
        _disk.With("library/machine/cab.proc", "").With("library/catalog/metric.proc", "").WithFolder("elsewhere");

        var selection = Find("elsewhere", "../library/machine/cab.proc", "../library/catalog");

        Assert.Equal(_disk["library"], selection.Root);
        Assert.Equal(["catalog/metric.proc", "machine/cab.proc"], selection.Paths);
    }

    [Fact]
    public void A_file_named_twice_is_taken_once()
    {
        _disk.With("a.proc", "");

        Assert.Equal(["a.proc"], Find("", "a.proc", "./a.proc", ".").Paths);
    }

    [Fact]
    public void A_named_file_may_have_any_extension()
    {
        _disk.With("notes.txt", "");

        Assert.Equal(["notes.txt"], Find("", "notes.txt").Paths);
    }

    [Fact]
    public void A_folder_with_the_name_of_a_source_is_a_folder()
    {
        _disk.With("x.proc/a.proc", "");

        Assert.Equal(["x.proc/a.proc"], Find("", ".").Paths);
        Assert.Equal(["x.proc/a.proc"], Find("", "x.proc").Paths);
    }

    [Fact]
    public void Linked_folders_do_not_lead_round_in_circles()
    {
        _disk.With("a/a.proc", "");
        Directory.CreateSymbolicLink(_disk["a/loop"], _disk.Path);
        File.CreateSymbolicLink(_disk["a/linked.proc"], _disk["a/a.proc"]);
        File.CreateSymbolicLink(_disk["a/self.proc"], _disk["a/self.proc"]);

        Assert.Equal(["a/a.proc", "a/linked.proc", "a/self.proc"], Find("", "a").Paths);
    }

    [Fact]
    public void The_standard_input_stands_in_the_current_folder()
    {
        _disk.With("procscript.json", "").WithFolder("machine");

        var selection = Find("machine", "-");

        Assert.Equal("machine/<stdin>", selection.StandardInput);
        Assert.Equal(["machine/<stdin>"], selection.Paths);
        Assert.Equal("<stdin>", new ScreenPaths(selection, _disk["machine"]).Of("machine/<stdin>"));
    }

    [Theory]
    [InlineData("missing.proc", "there is no file or folder 'missing.proc'.")]
    [InlineData("empty", "the folder 'empty' holds no .proc file.")]
    [InlineData("", "an empty path names no file or folder.")]
    [InlineData("a\0b", "an empty path names no file or folder.")]
    public void What_cannot_be_found_is_said(string path, string message)
    {
        _disk.WithFolder("empty");

        Assert.Equal(message, Assert.Throws<UsageException>(() => Find("", path)).Message);
    }

    [Fact]
    public void A_root_that_is_none_is_said()
    {
        _disk.With("a/a.proc", "").WithFolder("b");

        Assert.Equal("the library root 'c' is not a folder.", Assert.Throws<UsageException>(() => Find("", "c", ["a"])).Message);
        Assert.Equal($"'{_disk["a"]}' is not inside the library root 'b'.", Assert.Throws<UsageException>(() => Find("", "b", ["a"])).Message);
        Assert.Equal(_disk["a"], Find("", "a", ["a"]).Root);
    }

    [Fact]
    public void Files_are_named_from_where_the_user_stands()
    {
        _disk.With("procscript.json", "").With("machine/cab.proc", "").With("catalog/metric.proc", "");

        var paths = new ScreenPaths(Find("machine", "cab.proc"), _disk["machine"]);

        Assert.Equal("cab.proc", paths.Of("machine/cab.proc"));
        Assert.Equal("../catalog/metric.proc", paths.Of("catalog/metric.proc"));
    }

    private SourceSelection Find(string from, params string[] paths) => Find(from, root: null, paths);

    private SourceSelection Find(string from, string? root, string[] paths) =>
        SourceSelection.Find(new InputRequest([.. paths], root), Path.TrimEndingDirectorySeparator(_disk[from]));
}
