using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ProcScript.Analysis.Plans;
using ProcScript.Cards;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>Ticks and readings stay with one machine of a job, its variant and its revision, and can be carried in a file.</summary>
public sealed class KeepingARecord(ChromiumFixture chromium)
{
    private static readonly int Steps = SamplePlan.Steps(SamplePlan.Brief).Count();

    private const string RefusedStorage =
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('refused', 'SecurityError'); } });";

    [Fact]
    public async Task Ticks_and_readings_survive_a_reload_and_show_as_progress()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await pack.Field("step-1").CheckAsync();
        await pack.Field("step-3").CheckAsync();
        await pack.Field("step-3-check-1").CheckAsync();
        await pack.Field("step-3-reading").FillAsync("0.1 V");

        await pack.Page.ReloadAsync();

        Assert.True(await pack.Field("step-1").IsCheckedAsync());
        Assert.False(await pack.Field("step-2").IsCheckedAsync());
        Assert.True(await pack.Field("step-3-check-1").IsCheckedAsync());
        Assert.Equal("0.1 V", await pack.Field("step-3-reading").InputValueAsync());
        Assert.Equal($"2 of {Steps} steps", await pack.Page.Locator(".bar .count").InnerTextAsync());
        Assert.Empty(pack.Complaints);
    }

    [Fact]
    public async Task Jobs_variants_and_revisions_are_kept_apart()
    {
        var plan = SamplePlan.Brief;
        Plan[] others =
        [
            plan with { Revision = "000000000000" },
            plan with { Job = "another_job" },
            plan with { Variant = [.. plan.Variant.Select(option => option with { Present = !option.Present })] },
        ];
        await using var pack = await OpenPack.AtAsync(chromium, Write(plan));
        await pack.Field("step-1").CheckAsync();

        foreach (var other in others)
        {
            var page = await pack.AnotherTabAsync(Write(other));
            Assert.False(await page.Locator("[data-field='step-1']").IsCheckedAsync());
        }

        var same = await pack.AnotherTabAsync(Write(plan));
        await same.Locator(".records button").First.ClickAsync();
        Assert.True(await same.Locator("[data-field='step-1']").IsCheckedAsync());
    }

    [Fact]
    public async Task The_next_machine_starts_without_the_ticks_of_the_last_and_both_records_stay()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await pack.Page.Locator("[data-do=serial]").FillAsync("K-1");
        await pack.Page.Locator("[data-do=work-order]").FillAsync("77");
        await pack.Page.Locator("[data-do=start]").ClickAsync();
        Assert.Equal(("K-1", "77"), (await pack.Field("serial").InputValueAsync(), await pack.Field("work-order").InputValueAsync()));
        await pack.Field("step-1").CheckAsync();

        // The next day, at the next machine.
        var next = await pack.AnotherTabAsync(Write(SamplePlan.Brief));
        var question = await next.Locator("dialog h2").InnerTextAsync();
        Assert.Matches(@"^Continue the record: serial K-1, work order 77, started \d{4}-\d\d-\d\d \d\d:\d\d, or start a new one\?$", question);
        Assert.False(await next.Locator("[data-field='step-1']").IsCheckedAsync());
        await next.Locator("[data-do=serial]").FillAsync("K-2");
        await next.Keyboard.PressAsync("Enter");
        Assert.False(await next.Locator("dialog").IsVisibleAsync());
        Assert.False(await next.Locator("[data-field='step-1']").IsCheckedAsync());
        Assert.StartsWith("serial K-2, started ", await next.Locator(".bar .of").InnerTextAsync(), StringComparison.Ordinal);
        await next.Locator("[data-field='step-2']").CheckAsync();

        await next.Locator("[data-do=records]").ClickAsync();
        var lines = await next.Locator(".records li > span").AllInnerTextsAsync();
        Assert.Equal(2, lines.Count);
        Assert.StartsWith("serial K-2, started", lines[0], StringComparison.Ordinal);
        Assert.EndsWith("(this one)", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("serial K-1, work order 77, started", lines[1], StringComparison.Ordinal);
        await next.Locator(".records li").Nth(1).GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Continue") }).ClickAsync();
        Assert.Equal((true, false), (await next.Locator("[data-field='step-1']").IsCheckedAsync(), await next.Locator("[data-field='step-2']").IsCheckedAsync()));
        Assert.Empty(pack.Complaints);
    }

    [Fact]
    public async Task Who_ticks_without_an_answer_begins_a_record_of_their_own()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await pack.Field("step-1").CheckAsync();
        var next = await pack.AnotherTabAsync(Write(SamplePlan.Brief));

        await next.Keyboard.PressAsync("Escape");
        await next.Locator("[data-field='step-2']").CheckAsync();

        Assert.Contains("A new record was started", await next.Locator(".said").InnerTextAsync(), StringComparison.Ordinal);
        Assert.False(await next.Locator("[data-field='step-1']").IsCheckedAsync());
        await next.Locator("[data-do=records]").ClickAsync();
        Assert.Equal(2, await next.Locator(".records li").CountAsync());
        Assert.True(await pack.Field("step-1").IsCheckedAsync());
        Assert.False(await pack.Field("step-2").IsCheckedAsync());
    }

    [Fact]
    public async Task A_page_that_is_loaded_again_asks_once_a_shift_has_passed()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await pack.Field("step-1").CheckAsync();
        await pack.Page.ReloadAsync();
        Assert.True(await pack.Field("step-1").IsCheckedAsync());
        Assert.False(await pack.Page.Locator("dialog").IsVisibleAsync());

        await pack.Page.EvaluateAsync(
            """
            () => {
              for (const [key, kept] of Object.entries(localStorage))
                localStorage.setItem(key, JSON.stringify({ ...JSON.parse(kept), changed: new Date(Date.now() - 9 * 3600 * 1000).toISOString() }));
            }
            """);
        await pack.Page.ReloadAsync();

        Assert.True(await pack.Page.Locator("dialog").IsVisibleAsync());
        Assert.False(await pack.Field("step-1").IsCheckedAsync());
    }

    [Fact]
    public async Task A_record_is_deleted_only_after_a_question_and_leaves_the_others()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await pack.Field("step-1").CheckAsync();
        await pack.Page.Locator("[data-do=records]").ClickAsync();
        await pack.Page.Locator("[data-do=start]").ClickAsync();
        await pack.Field("step-2").CheckAsync();
        await pack.Page.Locator("[data-do=records]").ClickAsync();

        await pack.Page.Locator(".records li").First.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("^Delete") }).ClickAsync();

        Assert.Single(pack.Dialogs);
        await Assertions.Expect(pack.Page.Locator(".records li")).ToHaveCountAsync(1);
        Assert.False(await pack.Field("step-2").IsCheckedAsync());
        await pack.Page.Locator(".records button").First.ClickAsync();
        Assert.True(await pack.Field("step-1").IsCheckedAsync());
    }

    [Fact]
    public async Task A_record_of_another_revision_is_named_and_not_continued()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await pack.Field("serial").FillAsync("K-1");

        var other = await pack.AnotherTabAsync(Write(SamplePlan.Brief with { Revision = "000000000000" }));

        Assert.Equal("Start a record", await other.Locator("dialog h2").InnerTextAsync());
        Assert.Equal(0, await other.Locator(".records li").CountAsync());
        Assert.Contains("serial K-1", await other.Locator(".elsewhere").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("revision 4f7a91c2d0e3", await other.Locator(".elsewhere").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refusing_browser_still_takes_ticks_and_says_that_they_will_be_lost()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief), before: RefusedStorage);

        await pack.Field("step-1").CheckAsync();

        Assert.Equal($"1 of {Steps} steps", await pack.Page.Locator(".bar .count").InnerTextAsync());
        Assert.Contains("keeps no record", await pack.Page.Locator(".said").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(pack.Complaints);
    }

    [Fact]
    public async Task A_record_is_carried_to_another_machine_in_a_file()
    {
        await using var here = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await here.Field("step-17").CheckAsync();
        await here.Field("work-order").FillAsync("<b>7</b> \"quoted\"");
        var file = await SaveAsync(here.Page, "replace_evaporator-4f7a91c2d0e3-work_order_b_7_b_quoted_-record.json");

        await using var there = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await there.Field("step-18").CheckAsync();
        await LoadAsync(there.Page, file);

        Assert.True(await there.Field("step-17").IsCheckedAsync());
        Assert.False(await there.Field("step-18").IsCheckedAsync());
        Assert.Equal("<b>7</b> \"quoted\"", await there.Field("work-order").InputValueAsync());
        await there.Page.ReloadAsync();
        Assert.True(await there.Field("step-17").IsCheckedAsync());
        await there.Page.Locator("[data-do=records]").ClickAsync();
        Assert.Equal(2, await there.Page.Locator(".records li").CountAsync());
        Assert.Empty(here.Complaints);
        Assert.Empty(there.Complaints);
    }

    [Theory]
    [InlineData("{\"form\":\"procscript record 1\",\"job\":\"replace_evaporator\",\"variant\":\"air_seat\",\"revision\":\"older\",\"fields\":{\"step-2\":true}}", "revision older")]
    [InlineData("{\"form\":\"procscript record 1\",\"job\":\"replace_evaporator\",\"variant\":\"\",\"revision\":\"4f7a91c2d0e3\",\"fields\":{\"step-2\":true}}", "Nothing was changed")]
    [InlineData("{\"form\":\"procscript record 1\",\"fields\":null}", "is not a record")]
    [InlineData("[1,2", "is not a record")]
    [InlineData("null", "is not a record")]
    public async Task A_file_that_does_not_belong_here_changes_nothing(string content, string said)
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await pack.Field("step-1").CheckAsync();

        await LoadAsync(pack.Page, content);

        Assert.Contains(said, await pack.Page.Locator(".said").InnerTextAsync(), StringComparison.Ordinal);
        Assert.True(await pack.Field("step-1").IsCheckedAsync());
        Assert.False(await pack.Field("step-2").IsCheckedAsync());
        Assert.Empty(pack.Complaints);
    }

    [Fact]
    public async Task The_next_open_step_is_found_and_clearing_asks_first()
    {
        await using var pack = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await pack.Field("step-1").CheckAsync();
        await pack.Field("step-2").CheckAsync();

        await pack.Page.Locator("[data-do=next]").ClickAsync();
        Assert.Equal("step-3", await pack.Page.EvaluateAsync<string>("() => document.activeElement.dataset.field"));

        await pack.Page.Locator("[data-do=clear]").ClickAsync();
        Assert.Single(pack.Dialogs);
        Assert.False(await pack.Field("step-1").IsCheckedAsync());
        await pack.Page.ReloadAsync();
        Assert.Equal($"0 of {Steps} steps", await pack.Page.Locator(".bar .count").InnerTextAsync());
    }

    private string Write(Plan plan) => chromium.Write(WorkPack.Html(plan, PackTemplates.Standard).Text);

    private static async Task<string> SaveAsync(IPage page, string name)
    {
        var download = await page.RunAndWaitForDownloadAsync(() => page.Locator("[data-do=export]").ClickAsync());
        Assert.Equal(name, download.SuggestedFilename);
        var content = await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
        using var record = JsonDocument.Parse(content);
        Assert.Equal("4f7a91c2d0e3", record.RootElement.GetProperty("revision").GetString());
        return content;
    }

    private static async Task LoadAsync(IPage page, string content)
    {
        await page.Locator("[data-do=import]").SetInputFilesAsync(new FilePayload
        {
            Name = "record.json",
            MimeType = "application/json",
            Buffer = System.Text.Encoding.UTF8.GetBytes(content),
        });
        // The page lets go of a file when it is done with it.
        await Assertions.Expect(page.Locator("[data-do=import]")).ToHaveValueAsync("");
    }
}
