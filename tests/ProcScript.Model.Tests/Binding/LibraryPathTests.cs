using CsCheck;
using ProcScript.Model.Sources;

namespace ProcScript.Model.Tests.Binding;

/// <summary>Paths inside a library.</summary>
public sealed class LibraryPathTests
{
    [Theory]
    [InlineData("a.proc", "b.proc", "b.proc")]
    [InlineData("cab/a.proc", "b.proc", "cab/b.proc")]
    [InlineData("cab/a.proc", "../catalog/b.proc", "catalog/b.proc")]
    [InlineData("cab/a.proc", "./inner/../b.proc", "cab/b.proc")]
    [InlineData("cab/a.proc", @"..\catalog\b.proc", "catalog/b.proc")]
    [InlineData("cab/a.proc", "x//b.proc", "cab/x/b.proc")]
    [InlineData("cab/a.proc", "../../b.proc", null)]
    [InlineData("a.proc", "../b.proc", null)]
    [InlineData("cab/a.proc", "../../cab/b.proc", null)]
    [InlineData("a.proc", "/b.proc", null)]
    [InlineData("a.proc", @"\\server\b.proc", null)]
    [InlineData("a.proc", "C:/b.proc", null)]
    public void It_is_resolved_from_the_folder_of_the_file(string from, string written, string? path) =>
        Assert.Equal(path, LibraryPath.Resolve(from, written));

    [Fact]
    public void The_relative_path_leads_to_where_it_should()
    {
        var path = Gen.String[Gen.Char["ab"], 1, 2].Array[1, 4].Select(segments => string.Join('/', segments));
        Gen.Select(path, path).Sample((from, to) => LibraryPath.Resolve(from, LibraryPath.Relative(from, to)) == to);
    }

    [Fact]
    public void A_store_in_memory_knows_one_spelling_of_a_path()
    {
        var store = new MemorySourceStore([new(@".\cab\x.proc", "first"), new("cab/y/../x.proc", "second"), new("a.proc", "")]);
        Assert.Equal(["a.proc", "cab/x.proc"], store.Paths);
        Assert.Equal("second", store.Read("cab/x.proc").Content);
        Assert.Equal(SourceOutcome.Missing, store.Read("cab/z.proc").Outcome);
    }
}
