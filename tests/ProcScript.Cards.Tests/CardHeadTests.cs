using System.Text.Json;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Cards.Tests;

/// <summary>
/// What the head of a card says of energies, told from the printed pages and the published plan alone: the steps are walked anew here, and
/// nothing is taken from what the compiler worked out.
/// </summary>
public sealed partial class CardHeadTests
{
    public static TheoryData<string> Jobs => [.. DemoLibrary.Plans.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Each_card_says_how_every_energy_stands_when_it_is_taken_up(string job)
    {
        using var plan = JsonDocument.Parse(WorkPack.Json(DemoLibrary.Plans[job]));
        var page = Html(DemoLibrary.Plans[job]);
        var markdown = WorkPack.Markdown(DemoLibrary.Plans[job], PackTemplates.Standard).Text;
        var cards = Cards(plan.RootElement);
        var energies = cards.SelectMany(card => Steps(card)).Where(step => Word(step, "verb") == "isolate").Select(step => Word(step, "itemTitle")).Distinct().ToList();
        var standing = energies.ToDictionary(energy => energy, _ => "LIVE");
        List<string> expected = [];
        foreach (var card in cards)
        {
            foreach (var energy in energies)
            {
                var turns = Steps(card).Where(step => Word(step, "itemTitle") == energy && Word(step, "verb") is ("isolate" or "restore" or "verify")).ToList();
                var on = turns.Count == 0 ? "" : $" On this card it {string.Join(", ", turns.Select(Turn))}.";
                if (Steps(card).Any() || Word(card, "title") != "Work")
                {
                    expected.Add($"{standing[energy].Replace("@", $" {energy} since step ", StringComparison.Ordinal)}{(standing[energy].Contains('@') ? "" : $" {energy}")}.{on}");
                }

                if (turns.Count > 0)
                {
                    standing[energy] = $"{Standing(turns[^1])}@{turns[^1].GetProperty("number").GetInt32()}";
                }
            }
        }

        Assert.Equal(expected, page.QuerySelectorAll(".standing .energies li").Select(Said));
        Assert.Equal(expected, EnergyLine().Matches(Unlinked(markdown)).Select(line => $"{line.Groups[1].Value} {line.Groups[2].Value}"));
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void The_title_of_a_card_says_that_an_energy_comes_back_on_it(string job)
    {
        foreach (var card in Html(DemoLibrary.Plans[job]).QuerySelectorAll("section.refit"))
        {
            var title = card.QuerySelector("h2")!.TextContent;
            var back = card.QuerySelectorAll(".return:not(.isolation) h3").Select(head => head.TextContent["Return to service: ".Length..]).ToList();
            Assert.NotEqual("Make safe", title);
            Assert.Equal(back.Count > 0, title.StartsWith("Return to service: ", StringComparison.Ordinal) || title.Contains("back on", StringComparison.Ordinal) || title.Contains("on for a test", StringComparison.Ordinal));
            Assert.All(back, energy => Assert.Contains(energy, title, StringComparison.Ordinal));
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void What_is_undone_after_an_energy_is_back_is_told_as_open(string job)
    {
        using var plan = JsonDocument.Parse(WorkPack.Json(DemoLibrary.Plans[job]));
        var steps = Cards(plan.RootElement).SelectMany(Steps).ToList();
        foreach (var restore in steps.Where(step => Word(step, "verb") == "restore"))
        {
            var number = restore.GetProperty("number").GetInt32();
            var open = restore.GetProperty("return").GetProperty("stillOpen").EnumerateArray().Select(item => item.GetProperty("closedAt").GetInt32()).ToList();
            // A part that is out with its bolts is told as one; a plug, a line, a fluid and the part itself each.
            var later = steps.Where(step => step.GetProperty("number").GetInt32() > number && step.GetProperty("mirror").GetInt32() > 0).ToList();
            var told = later.Where(step => Word(step, "verb") is "fit" or "return" or "plug" or "connect" or "fill").Select(step => step.GetProperty("number").GetInt32());
            Assert.Empty(told.Except(open));
            Assert.Empty(open.Except(later.Select(step => step.GetProperty("number").GetInt32())));
        }
    }

    [Fact]
    public void What_is_open_when_an_energy_comes_back_stands_in_its_list()
    {
        var plan = SamplePlan.Evaporator;

        Assert.Contains("refrigerant R-134a: empty; whole again after step 99", Said(Html(plan).QuerySelector(".return .open li")!), StringComparison.Ordinal);
        Assert.Contains("  - **refrigerant R-134a**: empty; whole again after step [99](#step-99)", WorkPack.Markdown(plan, PackTemplates.Standard).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_energy_that_nothing_has_proved_dead_is_not_called_isolated_alone()
    {
        var states = new[]
        {
            new PlanEnergyState("mains", "mains", "unproved", 3, [new(5, "unproved", "isolated"), new(7, "isolated", "live"), new(9, "live", "unproved")]),
        };
        var plan = SamplePlan.Bare with { Strip = [SamplePlan.Bare.Strip[0] with { Energies = [.. states] }] };
        const string Expected = "mains since step 3. On this card it is proved dead at step 5, comes back at step 7, is isolated, but not yet proved dead, at step 9.";

        Assert.Equal($"ISOLATED, NOT PROVED DEAD {Expected}", Said(Html(plan).QuerySelector(".energies li")!));
        Assert.Contains($"- **ISOLATED, NOT PROVED DEAD**: {Expected}", Unlinked(WorkPack.Markdown(plan, PackTemplates.Standard).Text), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_worn_on_the_whole_job_stands_in_the_head_and_the_rest_at_its_step()
    {
        var page = Html(SamplePlan.Evaporator);

        Assert.All(page.QuerySelectorAll("section.strip, section.refit"), card => Assert.Equal("Wear on the whole job: helmet.", Said(card.QuerySelector(".standing .wear")!)));
        var own = SamplePlan.Steps(SamplePlan.Evaporator).Where(step => step.Ppe.Length > 0).ToList();
        Assert.Equal(own.Select(step => $"step-{step.Number}"), page.QuerySelectorAll(".step .wear").Select(wear => wear.Closest(".step")!.Id));
        Assert.All(own, step => Assert.Equal($"Wear: {string.Join("; ", step.Ppe)}.", Said(page.QuerySelector($"#step-{step.Number} .do > .act + .wear")!)));
        Assert.Contains("  - **Wear:** gloves against cold; eye protection.", WorkPack.Markdown(SamplePlan.Evaporator, PackTemplates.Standard).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_photo_is_asked_for_before_the_act_and_referred_to_on_the_way_back()
    {
        var (page, markdown) = (Html(SamplePlan.Evaporator), WorkPack.Markdown(SamplePlan.Evaporator, PackTemplates.Standard).Text);
        var steps = SamplePlan.Steps(SamplePlan.Evaporator).ToList();
        var taken = steps.Where(step => step.Photos.Length > 0).ToList();

        Assert.NotEmpty(taken);
        foreach (var step in taken)
        {
            var order = page.QuerySelector($"#step-{step.Number} .do")!.Children.Select(child => child.ClassName ?? "").ToList();
            Assert.True(order.LastIndexOf("sub photo") is >= 0 and var photo && photo < order.IndexOf("act"), string.Join(' ', order));
            Assert.Equal(step.Photos.Length, page.QuerySelectorAll($"#step-{step.Number} .photo input[type=checkbox]").Length);
            Assert.True(
                markdown.IndexOf($"- [ ] **Before you start step {step.Number}, photograph:** ", StringComparison.Ordinal) is > 0 and var asked
                    && asked < markdown.IndexOf($"- [ ] **{step.Number}. ", StringComparison.Ordinal));
            var back = steps.Single(other => other.Number == step.Mirror);
            Assert.All(step.Photos, text => Assert.Contains($"See photo taken at step {step.Number}: {text}", Said(page.QuerySelector($"#step-{back.Number}")!), StringComparison.Ordinal));
        }
    }

    [Fact]
    public void A_mark_is_asked_for_before_the_act_and_each_line_of_a_step_has_its_tick_or_field_on_both_cards()
    {
        var (page, markdown) = (Html(SamplePlan.Evaporator), WorkPack.Markdown(SamplePlan.Evaporator, PackTemplates.Standard).Text);
        var steps = SamplePlan.Steps(SamplePlan.Evaporator).ToList();
        var marked = Assert.Single(steps, step => step.Marks.Length > 0);
        var order = page.QuerySelector($"#step-{marked.Number} .do")!.Children.Select(child => child.ClassName ?? "").ToList();

        Assert.True(order.IndexOf("sub marking") is >= 0 and var mark && mark < order.IndexOf("act"), string.Join(' ', order));
        Assert.True(markdown.IndexOf($"- [ ] **Before you start step {marked.Number}, mark:** ", StringComparison.Ordinal) is > 0 and var asked
            && asked < markdown.IndexOf($"- [ ] **{marked.Number}. ", StringComparison.Ordinal));
        Assert.Contains($"- [ ] **Check:** Marks line up (made at step {marked.Number}): ", Unlinked(markdown), StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector($"#step-{marked.Mirror}-see-mark-1[type=checkbox]"));
        Assert.All(steps.Where(step => step.Ticks.Length > 0), step => Assert.NotNull(page.QuerySelector($"#step-{step.Number}-tick-1[type=checkbox]")));
        Assert.All(steps.SelectMany(step => step.Ticks), tick => Assert.Contains($"- [ ] {tick}", markdown, StringComparison.Ordinal));
        Assert.NotNull(page.QuerySelector($"#step-{marked.Number}-note-1[type=text]"));
        Assert.Contains("Measure the thickness: \\_", markdown, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector("[data-field=due-1-date]"));
        Assert.Contains("- [ ] After 50 h of work: **Retorque", markdown, StringComparison.Ordinal);
    }

    private static IDocument Html(Plan plan) => new HtmlParser().ParseDocument(WorkPack.Html(plan, PackTemplates.Standard).Text);

    private static List<JsonElement> Cards(JsonElement plan) =>
        [.. plan.GetProperty("strip").EnumerateArray(), plan.GetProperty("work"), .. plan.GetProperty("refit").EnumerateArray()];

    private static IEnumerable<JsonElement> Steps(JsonElement card) => card.GetProperty("steps").EnumerateArray();

    private static string Word(JsonElement element, string name) => element.GetProperty(name).GetString()!;

    private static string Standing(JsonElement step) => Word(step, "verb") == "restore" ? "LIVE" : IsProof(step) ? "ISOLATED" : "ISOLATED, NOT PROVED DEAD";

    private static string Turn(JsonElement step)
    {
        var turn = Word(step, "verb") switch
        {
            "restore" => "comes back",
            "verify" => "is proved dead",
            _ when IsProof(step) => "is isolated",
            _ => "is isolated, but not yet proved dead,",
        };
        return $"{turn} at step {step.GetProperty("number").GetInt32()}";
    }

    /// <summary>Whether it ends with the proof: what is isolated without is to be treated as live, and is proved by a step of its own.</summary>
    private static bool IsProof(JsonElement step) =>
        !step.GetProperty("how").EnumerateArray().Any(how => how.GetString()!.StartsWith("Treat it as live", StringComparison.Ordinal));

    /// <summary>A Markdown text without its links to steps.</summary>
    private static string Unlinked(string markdown) => StepLink().Replace(markdown, "$1");

    private static string Said(IElement element) => Blanks().Replace(element.TextContent, " ").Trim();

    [GeneratedRegex(@"\[(\d+)\]\(#step-\1\)")]
    private static partial Regex StepLink();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();

    [GeneratedRegex(@"^- \*\*(LIVE|ISOLATED|ISOLATED, NOT PROVED DEAD)\*\*: (.*)$", RegexOptions.Multiline)]
    private static partial Regex EnergyLine();
}
