using System.Text.Json;
using Microsoft.Playwright;
using ProcScript.Cards;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>Notes and photos stay with the record that they were made for, are carried in its file, and are told of where a browser keeps none.</summary>
public sealed class KeepingPhotos(ChromiumFixture chromium)
{
    private const string NoRoom =
        "IDBObjectStore.prototype.put = function () { throw new DOMException('full', 'QuotaExceededError'); };";

    // A red square of 2000 × 1000, made by the browser itself.
    private const string DrawPicture =
        """
        async () => {
          const canvas = document.createElement("canvas");
          canvas.width = 2000;
          canvas.height = 1000;
          const pen = canvas.getContext("2d");
          pen.fillStyle = "#b00";
          pen.fillRect(0, 0, 2000, 1000);
          return canvas.toDataURL("image/png").split(",")[1];
        }
        """;

    [Fact]
    public async Task A_photo_and_a_note_survive_a_reload_and_go_with_the_file()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write());
        await AddAsync(pack.Page);
        await pack.Field("strip-1-notes").FillAsync("Two bolts were loose.");

        await pack.Page.ReloadAsync();
        await Assertions.Expect(Photos(pack.Page)).ToHaveCountAsync(1);

        Assert.Equal("1600 × 800", await Photos(pack.Page).EvaluateAsync<string>("async image => { await image.decode(); return `${image.naturalWidth} × ${image.naturalHeight}`; }"));
        Assert.Equal("Two bolts were loose.", await pack.Field("strip-1-notes").InputValueAsync());
        var download = await pack.Page.RunAndWaitForDownloadAsync(() => pack.Page.Locator("[data-do=export]").ClickAsync());
        var file = await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        await using var there = await OpenPack.AtAsync(chromium, Write());
        await LoadAsync(there.Page, file);
        await Assertions.Expect(Photos(there.Page)).ToHaveCountAsync(1);
        await there.Page.ReloadAsync();
        await Assertions.Expect(Photos(there.Page)).ToHaveCountAsync(1);
        Assert.Empty(pack.Complaints);
        Assert.Empty(there.Complaints);
    }

    [Fact]
    public async Task A_browser_without_room_says_so_and_still_saves_the_photo_to_the_file()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(), before: NoRoom);

        await AddAsync(pack.Page);

        await Assertions.Expect(pack.Page.Locator(".said")).ToContainTextAsync("no room for the photo");
        await pack.Field("step-1").CheckAsync();
        var download = await pack.Page.RunAndWaitForDownloadAsync(() => pack.Page.Locator("[data-do=export]").ClickAsync());
        using var record = JsonDocument.Parse(await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken));
        Assert.StartsWith("data:image/jpeg;base64,", record.RootElement.GetProperty("photos").EnumerateObject().Single().Value.GetString(), StringComparison.Ordinal);
        await pack.Page.ReloadAsync();
        Assert.True(await pack.Field("step-1").IsCheckedAsync());
    }

    [Fact]
    public async Task What_is_no_picture_is_not_added_and_a_file_brings_in_no_other_address()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write());
        await Input(pack.Page).SetInputFilesAsync(new FilePayload { Name = "notes.png", MimeType = "image/png", Buffer = "no picture"u8.ToArray() });
        await Assertions.Expect(pack.Page.Locator(".said")).ToContainTextAsync("notes.png is no picture");
        await pack.Field("step-1").CheckAsync();
        var download = await pack.Page.RunAndWaitForDownloadAsync(() => pack.Page.Locator("[data-do=export]").ClickAsync());
        var record = System.Text.Json.Nodes.JsonNode.Parse(await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken))!;
        var place = await PlaceAsync(pack.Page);
        record["photos"] = new System.Text.Json.Nodes.JsonObject { [$"{place} 1"] = "http://e.example/x.png", [$"{place} 2"] = "data:text/html,<script>alert(1)</script>" };

        await LoadAsync(pack.Page, record.ToJsonString());

        Assert.Equal(0, await Photos(pack.Page).CountAsync());
        Assert.Empty(pack.Complaints);
    }

    [Fact]
    public async Task A_photo_stays_with_its_own_record_and_goes_with_it()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write());
        await AddAsync(pack.Page);
        await AddAsync(pack.Page);
        await pack.Page.Locator("[data-do=records]").ClickAsync();
        await pack.Page.Locator("[data-do=start]").ClickAsync();
        Assert.Equal(0, await Photos(pack.Page).CountAsync());

        await pack.Page.Locator("[data-do=records]").ClickAsync();
        await pack.Page.Locator(".records li").Nth(1).Locator("button").First.ClickAsync();
        await Assertions.Expect(Photos(pack.Page)).ToHaveCountAsync(2);
        await pack.Page.Locator(".pictures button").First.ClickAsync();
        await Assertions.Expect(Photos(pack.Page)).ToHaveCountAsync(1);
        await pack.Page.ReloadAsync();

        // All that are kept appear at once: had the other come back, there would never be one.
        await Assertions.Expect(Photos(pack.Page)).ToHaveCountAsync(1);
    }

    private string Write() => chromium.Write(WorkPack.Html(SamplePlan.Brief, PackTemplates.Standard).Text);

    private static ILocator Photos(IPage page) => page.Locator(".pictures img");

    private static ILocator Input(IPage page) => page.Locator(".photo input[type=file]").First;

    private static Task<string> PlaceAsync(IPage page) => page.Locator(".photo [data-field]").First.EvaluateAsync<string>("field => field.dataset.field");

    private static async Task AddAsync(IPage page)
    {
        var picture = Convert.FromBase64String(await page.EvaluateAsync<string>(DrawPicture));
        var before = await Photos(page).CountAsync();
        await Input(page).SetInputFilesAsync(new FilePayload { Name = "red.png", MimeType = "image/png", Buffer = picture });
        await Assertions.Expect(Photos(page)).ToHaveCountAsync(before + 1);
    }

    private static async Task LoadAsync(IPage page, string content)
    {
        await page.Locator("[data-do=import]").SetInputFilesAsync(new FilePayload
        {
            Name = "record.json",
            MimeType = "application/json",
            Buffer = System.Text.Encoding.UTF8.GetBytes(content),
        });
        await Assertions.Expect(page.Locator(".said")).ToContainTextAsync("is loaded");
    }
}
