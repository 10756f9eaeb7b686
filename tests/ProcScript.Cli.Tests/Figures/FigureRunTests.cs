using System.Text;
using System.Text.RegularExpressions;

namespace ProcScript.Cli.Tests.Figures;

/// <summary>Pictures on a real disk: what is read, what is refused, and what of them stands in a pack.</summary>
public sealed partial class FigureRunTests
{
    private const string Drawing = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 40 20\"><script>alert(1)</script><rect width=\"40\" height=\"20\"/></svg>";

    [Fact]
    public async Task Five_hundred_megabytes_are_refused_and_not_read()
    {
        using var library = Library("lid.jpg");
        using (var file = new FileStream(library["lib/lid.jpg"], FileMode.CreateNew))
        {
            file.Write([0xFF, 0xD8, 0xFF]);
            file.SetLength(500_000_000);
        }

        var before = GC.GetTotalAllocatedBytes();
        var run = await CheckAsync(library);

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains("PRC1144", run.Output, StringComparison.Ordinal);
        Assert.InRange(GC.GetTotalAllocatedBytes() - before, 0, 400_000_000);
    }

    [Theory]
    [InlineData("file")]
    [InlineData("folder")]
    [InlineData("chain")]
    public async Task A_link_that_leads_out_is_refused(string sort)
    {
        using var library = Library("img/lid.svg");
        library.With("outside/lid.svg", Drawing);
        switch (sort)
        {
            case "file":
                library.WithFolder("lib/img");
                File.CreateSymbolicLink(library["lib/img/lid.svg"], library["outside/lid.svg"]);
                break;
            case "folder":
                Directory.CreateSymbolicLink(library["lib/img"], library["outside"]);
                break;
            default:
                Directory.CreateSymbolicLink(library["lib/other"], library["outside"]);
                Directory.CreateSymbolicLink(library["lib/img"], "other");
                break;
        }

        var run = await CheckAsync(library);

        Assert.Contains("PRC1143", run.Output, StringComparison.Ordinal);
        Assert.Contains("leads out of the library", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_link_within_the_library_is_followed()
    {
        using var library = Library("img/lid.svg");
        library.With("lib/drawings/lid.svg", Drawing.Replace("<script>alert(1)</script>", "", StringComparison.Ordinal));
        Directory.CreateSymbolicLink(library["lib/img"], "drawings");

        var run = await CheckAsync(library);

        Assert.Equal("checked 1 procedure in 1 file: all proven\n", run.Output);
    }

    [Theory]
    [InlineData("fix", "nothing to fix; no findings left\n")]
    [InlineData("draft", "nothing to draft; no questions open\n")]
    public async Task A_verb_that_edits_sees_the_pictures_too(string verb, string told)
    {
        using var library = Library("lid.svg");
        library.With("lib/lid.svg", Drawing.Replace("<script>alert(1)</script>", "", StringComparison.Ordinal));

        var run = await CliRun.AtAsync(library["lib"], verb, ".", "--root", ".");

        Assert.Equal(new CliRun(ExitCode.Clean, told, ""), run);
    }

    [Fact]
    public async Task A_pack_holds_the_picture_made_safe_and_the_text_has_a_copy_beside_it()
    {
        using var library = Library("lid.svg");
        library.With("lib/lid.svg", Drawing);

        var run = (await CliRun.AtAsync(library["lib"], "build", ".", "--root", ".", "-o", library["packs"])).AssertNoBug();

        Assert.Contains("PRC1146", run.Output, StringComparison.Ordinal);
        var page = library.Read("packs/lid_off/cards.html");
        var data = Data().Match(page);
        var picture = Encoding.UTF8.GetString(Convert.FromBase64String(data.Groups["data"].Value));
        Assert.Contains("<rect", picture, StringComparison.Ordinal);
        Assert.DoesNotContain("script", picture, StringComparison.Ordinal);
        Assert.Contains("img-src data:", page, StringComparison.Ordinal);
        Assert.Equal(picture, library.Read("packs/lid_off/figures/lid.svg"));
        Assert.Contains("![The lid](figures/lid.svg)", library.Read("packs/lid_off/cards.md"), StringComparison.Ordinal);
        Assert.DoesNotContain(data.Groups["data"].Value[..40], library.Read("packs/lid_off/plan.json"), StringComparison.Ordinal);
    }

    /// <summary>Whatever is wrong with the file, who works from the pack would not see what he has to.</summary>
    [Theory]
    [InlineData(null, "PRC1143")]
    [InlineData("no picture at all", "PRC1145")]
    [InlineData("too large", "PRC1144")]
    public async Task A_pack_that_lacks_a_picture_is_not_written_and_the_others_are(string? content, string code)
    {
        using var library = Library("lid.svg");
        library.With("lib/other.proc", "machine tray \"tray\" { part mat \"mat\" }\nprocedure mat_off \"Take the mat off\" on tray { goal remove mat  stage \"Mat\" { remove mat } }\n");
        if (content is not null)
        {
            library.With("lib/lid.svg", content == "too large" ? Drawing + new string(' ', 5_000_000) : content);
        }

        library.With("packs/lid_off/cards.html", "earlier");

        var run = (await CliRun.AtAsync(library["lib"], "build", ".", "--root", ".", "-o", library["packs"])).AssertNoBug();

        Assert.Equal(ExitCode.Findings, run.Code);
        Assert.Contains(code, run.Output, StringComparison.Ordinal);
        Assert.Contains("lid_off lacks lid.svg: nothing written; what stands in lid_off is from an earlier build\n", run.Output, StringComparison.Ordinal);
        Assert.EndsWith("1 pack written, 1 procedure without a picture\n", run.Output, StringComparison.Ordinal);
        Assert.Equal("earlier", library.Read("packs/lid_off/cards.html"));
        Assert.True(File.Exists(library["packs/mat_off/cards.html"]));
    }

    [Fact]
    public async Task A_card_says_so_where_an_author_does_without_a_picture()
    {
        using var library = Library("lid.svg", "// proc: allow PRC1143 because \"The photograph comes with the first machine.\"");

        var run = (await CliRun.AtAsync(library["lib"], "build", ".", "--root", ".", "-o", library["packs"])).AssertNoBug();

        Assert.Equal(ExitCode.Clean, run.Code);
        Assert.Contains("picture missing: lid.svg", library.Read("packs/lid_off/cards.html"), StringComparison.Ordinal);
    }

    private static TemporaryFolder Library(string picture, string above = "") => new TemporaryFolder().With(
        "lib/box.proc",
        $$"""
        clip snap "clip" { release "Lift the edge." }

        machine box "box" {
          part lid "lid" {
            held by 2 snap as lid_clips
            {{above}}
            figure "{{picture}}" "The lid"
          }
        }

        procedure lid_off "Take the lid off" on box {
          goal remove lid
          stage "Lid" {
            release lid_clips
            remove lid { store "Bench" }
          }
        }
        """);

    private static async Task<CliRun> CheckAsync(TemporaryFolder library) => (await CliRun.AtAsync(library["lib"], "check", ".", "--root", ".")).AssertNoBug();

    [GeneratedRegex("src=\"data:image/svg\\+xml;base64,(?<data>[A-Za-z0-9+/=]+)\"")]
    private static partial Regex Data();
}
