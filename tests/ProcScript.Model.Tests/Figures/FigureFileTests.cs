using System.Buffers.Binary;
using System.Text;
using CsCheck;
using ProcScript.Model.Figures;

namespace ProcScript.Model.Tests.Figures;

/// <summary>Whatever the bytes of a picture are, something comes of them, and nothing gets through that draws nothing.</summary>
public sealed class FigureFileTests
{
    private const string Secret = "Tollard 4711, 52.5200 N";

    private static readonly FigureLimits Limits = new(4_000_000, 50_000_000);

    private static readonly (string Path, byte[] Bytes)[] Pictures =
        [("a.jpg", PictureBytes.Jpeg(Secret)), ("a.png", PictureBytes.Png(Secret)), ("a.webp", PictureBytes.Webp(Secret)), ("a.svg", PictureBytes.Svg(Secret))];

    public static TheoryData<string> Paths => [.. Pictures.Select(picture => picture.Path)];

    [Theory]
    [MemberData(nameof(Paths))]
    public void Notes_of_cameras_and_programs_do_not_get_through(string path)
    {
        var bytes = Pictures.Single(picture => picture.Path == path).Bytes;
        Assert.Contains(Secret, Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);

        var examined = FigureFile.Of(bytes).Examine(path, Limits);

        Assert.Equal(FigureTrouble.None, examined.Trouble);
        Assert.DoesNotContain(Secret, Encoding.Latin1.GetString(examined.Content.AsSpan()), StringComparison.Ordinal);
        Assert.Equal(path != "a.svg", examined.HadPosition);
        Assert.Equal((32, 16), (examined.Width, examined.Height));
    }

    [Theory]
    [MemberData(nameof(Paths))]
    public void What_was_made_safe_is_taken_again_as_it_is(string path)
    {
        var once = FigureFile.Of(Pictures.Single(picture => picture.Path == path).Bytes).Examine(path, Limits);

        var twice = FigureFile.Of([.. once.Content]).Examine(path, Limits);

        Assert.Equal(FigureTrouble.None, twice.Trouble);
        Assert.Equal(once.Hash, twice.Hash);
        Assert.Empty(twice.Removed);
        Assert.False(twice.HadPosition);
    }

    [Theory]
    [InlineData("a.jpg")]
    [InlineData("a.png")]
    [InlineData("a.webp")]
    public void A_picture_that_lies_on_its_side_still_does_and_is_measured_as_it_is_seen(string path)
    {
        var bytes = path switch
        {
            "a.jpg" => PictureBytes.Jpeg(Secret, orientation: 6),
            "a.png" => PictureBytes.Png(Secret, orientation: 6),
            _ => PictureBytes.Webp(Secret, orientation: 6),
        };

        var examined = FigureFile.Of(bytes).Examine(path, Limits);

        Assert.Equal((16, 32), (examined.Width, examined.Height));
        Assert.Equal((6, false), ExifBlock.Read(Between(examined.Content.AsSpan(), "MM\0*"u8)));
        Assert.DoesNotContain(Secret, Encoding.Latin1.GetString(examined.Content.AsSpan()), StringComparison.Ordinal);
    }

    [Fact]
    public void Whatever_a_picture_becomes_on_its_way_something_comes_of_it() =>
        Gen.Select(Gen.Int[0, Pictures.Length - 1], Gen.Select(Gen.Int[0, 4000], Gen.Byte).Array[0, 6], Gen.Int[0, 4000]).Sample((which, changes, length) =>
        {
            var (path, bytes) = Pictures[which];
            byte[] spoiled = [.. bytes.Take(Math.Max(4, length))];
            foreach (var (at, value) in changes)
            {
                spoiled[at % spoiled.Length] = value;
            }

            var examined = FigureFile.Of(spoiled).Examine(path, Limits);

            Assert.Equal(examined.Trouble == FigureTrouble.None, !examined.Content.IsEmpty);
            Assert.DoesNotContain("<script", Encoding.Latin1.GetString(examined.Content.AsSpan()), StringComparison.OrdinalIgnoreCase);
        });

    [Fact]
    public void What_has_too_many_bytes_is_not_fetched()
    {
        var isFetched = false;
        FigureFile file = new(FigureTrouble.None, 500_000_000, () =>
        {
            isFetched = true;
            return [];
        });

        Assert.Equal(FigureTrouble.TooManyBytes, file.Examine("a.jpg", Limits).Trouble);
        Assert.False(isFetched);
    }

    [Fact]
    public void A_small_file_that_says_it_is_huge_is_refused_by_its_header()
    {
        var png = PictureBytes.Png("");
        BinaryPrimitives.WriteUInt32BigEndian(png.AsSpan(16), 65_500);
        BinaryPrimitives.WriteUInt32BigEndian(png.AsSpan(20), 65_500);

        Assert.Equal(FigureTrouble.TooManyPixels, FigureFile.Of(png).Examine("a.png", Limits).Trouble);
    }

    [Theory]
    [InlineData("<path fill=\"URL(http://example.invalid/)\"/>")]
    [InlineData("<path fill=\"u\\72l(http://example.invalid/)\"/>")]
    [InlineData("<path style=\"fill:image-set('http://example.invalid/')\"/>")]
    [InlineData("<style>path{fill:url(//example.invalid/a)}</style>")]
    [InlineData("<style>@\\69mport 'http://example.invalid/'</style>")]
    [InlineData("<use href=\" http://example.invalid/#a\"/>")]
    [InlineData("<image href=\"data:image/png;base64,example.invalid\"/>")]
    [InlineData("<a href=\"http://example.invalid/\"><path d=\"M0 0\"/></a>")]
    [InlineData("<x:script xmlns:x=\"http://www.w3.org/2000/svg\">example.invalid</x:script>")]
    [InlineData("<path ONCLICK=\"example.invalid\"/>")]
    [InlineData("<feImage href=\"http://example.invalid/\"/>")]
    [InlineData("<path marker-end=\"url( 'http://example.invalid/' )\"/>")]
    public void Nothing_of_a_drawing_leads_out_of_it_and_what_did_is_told(string inside)
    {
        var examined = FigureFile.Of(Encoding.UTF8.GetBytes($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">{inside}</svg>")).Examine("a.svg", Limits);

        Assert.Equal(FigureTrouble.None, examined.Trouble);
        Assert.NotEmpty(examined.Removed);
        Assert.DoesNotContain("example.invalid", Encoding.UTF8.GetString(examined.Content.AsSpan()), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Elements_within_each_other_without_end_are_refused()
    {
        var deep = string.Concat(Enumerable.Repeat("<g>", 50_000));

        Assert.Equal(FigureTrouble.Damaged, FigureFile.Of(Encoding.UTF8.GetBytes($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\">{deep}")).Examine("a.svg", Limits).Trouble);
    }

    private static ReadOnlySpan<byte> Between(ReadOnlySpan<byte> bytes, ReadOnlySpan<byte> start) => bytes[bytes.IndexOf(start)..];
}
