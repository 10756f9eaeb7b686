using ProcScript.Cli.Sources;
using ProcScript.Model.Sources;

namespace ProcScript.Cli.Tests.Sources;

public sealed class DiskSourceStoreTests : IDisposable
{
    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Fact]
    public void A_file_is_read_as_it_is()
    {
        _disk.With("a.proc", "part seat \"Sëät\"\r\n");

        Assert.Equal(new SourceReading("part seat \"Sëät\"\r\n", SourceOutcome.Read), Store("a.proc").Read("a.proc"));
    }

    [Fact]
    public void A_file_that_nobody_asked_about_is_read_when_it_is_used()
    {
        _disk.With("a.proc", "").With("b.proc", "b");

        Assert.Equal("b", Store("a.proc").Read("b.proc").Content);
    }

    [Theory]
    [InlineData("EFBBBF61", "a")]
    [InlineData("EFBBBF", "")]
    [InlineData("", "")]
    [InlineData("61EFBBBF", "a\uFEFF")]
    public void The_mark_before_the_text_is_not_part_of_it(string bytes, string content)
    {
        _disk.With("a.proc", Convert.FromHexString(bytes));

        Assert.Equal(new SourceReading(content, SourceOutcome.Read), Store("a.proc").Read("a.proc"));
    }

    [Theory]
    [InlineData("61FF", "Byte 2 (0xFF) is not UTF-8; save it as UTF-8.")]
    [InlineData("6161C3", "Byte 3 (0xC3) is not UTF-8; save it as UTF-8.")]
    [InlineData("EDA080", "Byte 1 (0xED) is not UTF-8; save it as UTF-8.")]
    [InlineData("FFFE6100", "It is saved as UTF-16; save it as UTF-8.")]
    [InlineData("FEFF0061", "It is saved as UTF-16; save it as UTF-8.")]
    public void What_is_not_UTF8_is_no_text(string bytes, string detail)
    {
        _disk.With("a.proc", Convert.FromHexString(bytes));

        Assert.Equal(new SourceReading(null, SourceOutcome.NotText, detail), Store("a.proc").Read("a.proc"));
    }

    [Fact]
    public void A_missing_file_is_missing()
    {
        _disk.With("a.proc", "");

        Assert.Equal(SourceOutcome.Missing, Store("a.proc").Read("b.proc").Outcome);
        Assert.Equal(SourceOutcome.Missing, Store("a.proc").Read("no/such/folder.proc").Outcome);
        Assert.Equal(SourceOutcome.Missing, Store("a.proc").Read("a\0b").Outcome);
    }

    [Fact]
    public void A_folder_is_unreadable()
    {
        _disk.With("a.proc", "").WithFolder("b.proc");

        Assert.Equal(new SourceReading(null, SourceOutcome.Unreadable, "It is a folder."), Store("a.proc").Read("b.proc"));
    }

    [Fact]
    public void A_link_to_itself_is_unreadable_and_was_asked_about()
    {
        File.CreateSymbolicLink(_disk["self.proc"], _disk["self.proc"]);
        _disk.With("a.proc", "");
        var store = Store(".");

        Assert.Equal(SourceOutcome.Read, store.Read("a.proc").Outcome);
        Assert.False(store.HasUnreadableInput);
        Assert.Equal(SourceOutcome.Unreadable, store.Read("self.proc").Outcome);
        Assert.True(store.HasUnreadableInput);
    }

    [Fact]
    public void A_name_that_the_system_refuses_is_unreadable()
    {
        _disk.With("a.proc", "");

        Assert.Equal(SourceOutcome.Unreadable, Store("a.proc").Read(new string('x', 5000)).Outcome);
    }

    [Fact]
    public void A_huge_file_is_too_large()
    {
        _disk.With("a.proc", "");
        using (var file = File.OpenWrite(_disk["a.proc"]))
        {
            file.SetLength(SourceBytes.MostBytes + 1L);
        }

        Assert.Equal(SourceOutcome.TooLarge, Store("a.proc").Read("a.proc").Outcome);
    }

    [Fact]
    public void The_standard_input_is_read_once()
    {
        var opened = 0;
        var store = new DiskSourceStore(Selection("-"), () =>
        {
            opened++;
            return new MemoryStream("piped"u8.ToArray());
        });

        Assert.Equal("piped", store.Read("<stdin>").Content);
        Assert.Equal("piped", store.Read("<stdin>").Content);
        Assert.Equal(1, opened);
    }

    private DiskSourceStore Store(string path) => new(Selection(path), () => Stream.Null);

    private SourceSelection Selection(string path) => SourceSelection.Find(new InputRequest([path], Root: null), _disk.Path);
}
