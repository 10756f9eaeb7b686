using ProcScript.Cli.Reports;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Tests.Reports;

public sealed class SourceUriTests
{
    [Theory]
    [InlineData("a/b.proc", "a/b.proc")]
    [InlineData("größe x/100%.proc", "gr%C3%B6%C3%9Fe%20x/100%25.proc")]
    [InlineData("a:b/c?d#e.proc", "a%3Ab/c%3Fd%23e.proc")]
    [InlineData("<stdin>", "%3Cstdin%3E")]
    [InlineData("a\\b.proc", "a%5Cb.proc")]
    [InlineData("/home/x y/b.json", "file:///home/x%20y/b.json")]
    [InlineData("C:\\Shop 1\\b.json", "file:///C:/Shop%201/b.json")]
    [InlineData("d:/shop/b.json", "file:///d:/shop/b.json")]
    [InlineData("\\\\server\\share\\größe.json", "file://server/share/gr%C3%B6%C3%9Fe.json")]
    public void A_path_has_its_address(string path, string uri)
    {
        Assert.Equal(uri, SourceUri.Of(path));
        Assert.True(Uri.TryCreate(uri, UriKind.RelativeOrAbsolute, out var parsed));
        Assert.Equal(!SourceUri.IsRelative(uri), parsed.IsAbsoluteUri);
    }

    [Theory]
    [InlineData("", "a.proc", "a.proc")]
    [InlineData("shop/", "a.proc", "shop/a.proc")]
    [InlineData("shop/west/", "../baseline.json", "shop/baseline.json")]
    [InlineData("shop/west/", "../../baseline.json", "baseline.json")]
    [InlineData("shop/", "../../baseline.json", "../baseline.json")]
    public void A_file_is_named_from_the_repository(string prefix, string path, string name)
    {
        Assert.Equal(name, new RepositoryPaths(prefix).Of(path));
    }

    [Fact]
    public void A_system_with_back_slashes_gives_the_same_paths()
    {
        // On this system a back slash is a letter like any other, so that the way down keeps it until it is replaced.
        Assert.Equal("west/a b/c.proc", RelativePath.Inside("/shop", "/shop/west\\a b\\c.proc", '\\'));
    }

    [Fact]
    public void The_repository_is_the_nearest_folder_with_a_git()
    {
        using TemporaryFolder disk = new();
        disk.With("work/.git", "gitdir: elsewhere").WithFolder("work/shop/west").WithFolder(".git");

        Assert.Equal("shop/west/a.proc", RepositoryPaths.For(disk["work/shop/west"]).Of("a.proc"));
        Assert.Equal("a.proc", RepositoryPaths.For(disk["work"]).Of("a.proc"));
    }
}
