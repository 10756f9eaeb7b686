using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using CsCheck;
using Markdig;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Cards.Tests;

/// <summary>Whatever an author writes comes out as text: no element, handler, address or markup of the author's own.</summary>
public sealed partial class HostileTextTests
{
    private static readonly MarkdownPipeline Everything = new MarkdownPipelineBuilder().UseAdvancedExtensions().Build();

    [Fact]
    public void Html_shows_every_text_as_it_was_written_and_nothing_else_comes_of_it() => HostilePlan.Generate.Sample(plan =>
    {
        var document = Parse(WorkPack.Html(plan, PackTemplates.Standard).Text);

        Assert.Equal(string.Concat(new[] { "words.js", "photos.js", "pack.js", "search.js" }.Select(PackTemplates.Standard.Raw)), Assert.Single(document.Scripts).TextContent);
        Assert.Single(document.QuerySelectorAll("style"));
        Assert.Empty(document.QuerySelectorAll("img, iframe, object, embed, link, base, form, video, audio, template"));
        Assert.All(document.QuerySelectorAll("a"), link => Assert.StartsWith("#", link.GetAttribute("href"), StringComparison.Ordinal));
        Assert.All(document.All.SelectMany(element => element.Attributes), attribute => Assert.False(attribute.Name.StartsWith("on", StringComparison.Ordinal)));
        var shown = OneBlank(document.QuerySelector("main")!.TextContent);
        Assert.All(PlainTexts(plan), text => Assert.Contains(OneBlank(text), shown, StringComparison.Ordinal));
    }, iter: 20);

    [Fact]
    public void Markdown_shows_every_text_as_it_was_written_and_nothing_else_comes_of_it() => HostilePlan.Generate.Sample(plan =>
    {
        var document = Parse(Markdown.ToHtml(WorkPack.Markdown(plan, PackTemplates.Standard).Text, Everything));

        var reaching = document.QuerySelectorAll("script, style, img, iframe, a:not([href^='#step-'], [href^='#energy-'], [id^=step-], [id^=energy-]), object, video, audio, sup, sub, del, mark, math");
        Assert.Empty(reaching.Select(element => $"{element.OuterHtml} after {element.PreviousSibling?.TextContent}"));
        var shown = OneBlank(document.Body!.TextContent);
        Assert.All(PlainTexts(plan), text => Assert.Contains(OneBlank(text), shown, StringComparison.Ordinal));
    }, iter: 25);

    [Theory]
    [InlineData("```\n![x](http://e.example/x.png) ~~gone~~\n```", "pre")]
    [InlineData("3. third\n4. fourth", "ol")]
    [InlineData("> quoted", "blockquote")]
    [InlineData("- a\n- b", "ul")]
    public void Prose_that_begins_with_a_block_stays_one_behind_other_words(string prose, string element)
    {
        var plan = SamplePlan.Evaporator with
        {
            Energies = [SamplePlan.Evaporator.Energies[0] with { MakeSafe = [new("isolate", prose, false), new("verify", prose, false)] }],
            Discards = [new PlanDiscard("bracket", prose)],
        };

        var document = Parse(Markdown.ToHtml(WorkPack.Markdown(plan, PackTemplates.Standard).Text, Everything));

        foreach (var lead in new[] { "Isolate.", "Verify.", "bracket:" })
        {
            var item = Assert.Single(document.QuerySelectorAll("li"), item => item.TextContent.TrimStart().StartsWith(lead, StringComparison.Ordinal));
            Assert.Contains(item.Children, child => child.LocalName == element);
        }

        Assert.Empty(document.QuerySelectorAll("img, del"));
    }

    [Fact]
    public void The_style_sheet_cannot_be_left_through_a_title() => HostilePlan.Text.Sample(text =>
    {
        var plan = HostilePlan.Fill(() => text);
        var style = Parse(WorkPack.Html(plan, PackTemplates.Standard).Text).QuerySelector("style")!.TextContent;

        // Every quoted string of the margins holds nothing but plain letters and escapes.
        Assert.All(MarginText().Matches(style), match => Assert.Matches(@"^([A-Za-z0-9 .:]|\\[0-9a-f]+ )*$", match.Groups[1].Value));
        Assert.True(MarginText().Count(style) > 5);
    }, iter: 25);

    private static IDocument Parse(string html) => new HtmlParser().ParseDocument(html);

    /// <summary>Blanks of the layout do not count, and a renderer may drop those at the ends.</summary>
    private static string OneBlank(string text) => Blanks().Replace(text, " ").Trim();

    private static IEnumerable<string> PlainTexts(Plan plan)
    {
        IEnumerable<string> cover = [plan.Title, plan.Job, plan.Revision, plan.MachineTitle, .. plan.Goals, .. plan.Variant.Select(option => option.Title), plan.HeaviestLift!.Part];
        IEnumerable<string> lists =
        [
            .. plan.Ppe, .. plan.Tools.Select(tool => tool.Title), .. plan.Orders.SelectMany(line => new[] { line.Title, line.Reason }),
            .. plan.Consumables.SelectMany(line => new[] { line.Title, line.Amount }), .. plan.Energies.SelectMany(energy => new[] { energy.Title, energy.Wait, energy.Limits }),
            .. plan.Fluids.SelectMany(fluid => new[] { fluid.Title, fluid.Charge }), .. plan.Controls.SelectMany(control => new[] { control.Title, control.Home }),
            .. plan.Bags.SelectMany(bag => bag.Contents.SelectMany(line => new[] { line.Title, line.From }).Append(bag.Stage)), .. plan.Discards.Select(discard => discard.Title), .. plan.Sources,
        ];
        var stages = plan.Strip.Append(plan.Work).Concat(plan.Refit).ToList();
        var steps = stages.SelectMany(stage => stage.Steps).SelectMany(step => (IEnumerable<string>)
        [
            step.Text, step.Where, step.Torque, step.Store, step.Scrap, .. step.Tools, .. step.Photos, .. step.Ppe, .. step.SeePhotos.Select(photo => photo.Text),
            .. step.Return?.StillOpen.SelectMany(open => new[] { open.Title, open.State }) ?? [], .. step.NewParts.Select(part => part.Title), .. step.Consumes,
            .. step.Figures.Select(figure => figure.Caption), step.Reading?.Text ?? "", step.Reading?.Limits ?? "",
        ]);
        return [.. cover, .. lists, .. stages.Select(stage => stage.Title), .. stages.SelectMany(stage => stage.Energies).Select(energy => energy.Title), .. steps, .. plan.Map.Nodes.Select(node => node.Title)];
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();

    [GeneratedRegex("""(?:top|bottom)-(?:left|right) \{ content: "([^\n]*?)"[;} ]""")]
    private static partial Regex MarginText();
}
