using System.Text.Json;
using Microsoft.Playwright;
using ProcScript.Analysis.Plans;
using ProcScript.Cards;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Browser.Tests;

/// <summary>Ticks and readings stay with the job, the variant and the revision, and can be carried in a file.</summary>
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
        Assert.True(await same.Locator("[data-field='step-1']").IsCheckedAsync());
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
        var file = await SaveAsync(here.Page);

        await using var there = await OpenPack.AtAsync(chromium, Write(SamplePlan.Brief));
        await there.Field("step-18").CheckAsync();
        await LoadAsync(there.Page, file);

        Assert.True(await there.Field("step-17").IsCheckedAsync());
        Assert.False(await there.Field("step-18").IsCheckedAsync());
        Assert.Equal("<b>7</b> \"quoted\"", await there.Field("work-order").InputValueAsync());
        await there.Page.ReloadAsync();
        Assert.True(await there.Field("step-17").IsCheckedAsync());
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

    private static async Task<string> SaveAsync(IPage page)
    {
        var download = await page.RunAndWaitForDownloadAsync(() => page.Locator("[data-do=export]").ClickAsync());
        Assert.Equal("replace_evaporator-4f7a91c2d0e3-record.json", download.SuggestedFilename);
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
        await page.WaitForFunctionAsync("() => document.querySelector('.said').textContent !== ''");
    }
}
