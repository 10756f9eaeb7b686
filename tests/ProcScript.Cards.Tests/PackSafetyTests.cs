using System.Collections.Immutable;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Tests.Samples;
using ProcScript.Model.Machines;

namespace ProcScript.Cards.Tests;

/// <summary>
/// What the packs of the demo library tell people to do, read as a person would read it: the steps from <c>cards.html</c> in the order they are
/// printed, what each is done to from <c>plan.json</c>, and the machine from its sources. No line of this knows how a refit is derived.
/// </summary>
public sealed class PackSafetyTests
{
    public static TheoryData<string> Jobs => [.. DemoLibrary.Plans.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Jobs))]
    public void No_hand_comes_to_a_live_joint_and_no_power_to_an_open_one(string job) => Assert.Empty(Faults(new PackReader(job, DemoLibrary.Plans[job])));

    /// <summary>The reader is no good that finds nothing in a pack whose power comes back a card too early.</summary>
    [Fact]
    public void A_pack_whose_power_comes_back_too_early_is_found()
    {
        var plan = DemoLibrary.Plans["replace_pump"];
        var back = plan.Refit.Single(card => card.Title.StartsWith("Return to service", StringComparison.Ordinal));
        var first = plan.Refit.IndexOf(back) - 1;
        var hasty = plan with { Refit = Numbered([.. plan.Refit[..first], back, plan.Refit[first], .. plan.Refit[(first + 2)..]], plan.Refit[0].Steps[0].Number) };

        Assert.Contains(Faults(new PackReader("replace_pump", hasty)), fault => fault.Contains("is live with the", StringComparison.Ordinal));
    }

    private static ImmutableArray<PlanStage> Numbered(IEnumerable<PlanStage> cards, int number) =>
        [.. cards.Select(card => card with { Steps = [.. card.Steps.Select(step => step with { Number = number++ })] })];

    private static IEnumerable<string> Faults(PackReader reader)
    {
        foreach (var step in reader.Steps)
        {
            if (step.Item is Joint { On: { } energy } joint && step.Verb is not ("inspect" or "replace" or "discard") && reader.IsInMachine(joint) && reader.IsLive(energy))
            {
                yield return $"step {step.Number}: {step.Text}, and the {energy.Title} is live";
            }

            reader.Do(step);
            foreach (var live in reader.Returned)
            {
                foreach (var open in reader.Machine.Joints.Where(other => other.On == live && !reader.IsGone(other) && !reader.IsWhole(other)))
                {
                    yield return $"step {step.Number}: the {live.Title} is live with {open.Name} open";
                }

                foreach (var off in reader.Machine.Joints.Where(other => other.On == live && !step.IsInTest).SelectMany(Hiders).Except(reader.MayBeOpen(live)).Where(part => !reader.IsFitted(part)))
                {
                    yield return $"step {step.Number}: the {live.Title} is live with the {off.Title} off";
                }
            }
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void A_test_leaves_nothing_live(string job)
    {
        var reader = new PackReader(job, DemoLibrary.Plans[job]);
        foreach (var card in reader.Steps.GroupBy(step => step.Card))
        {
            var before = reader.Machine.Energies.Where(reader.IsLive).ToList();
            foreach (var step in card)
            {
                reader.Do(step);
            }

            if (card.First().IsInTest)
            {
                Assert.Equal(before, reader.Machine.Energies.Where(reader.IsLive));
                Assert.Contains(card, step => step.Verb == "restore");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void What_came_out_of_a_prop_goes_back_on_it_and_keeps_it_until_it_is_held(string job)
    {
        var reader = new PackReader(job, DemoLibrary.Plans[job]);
        var left = new HashSet<Part>();
        foreach (var step in reader.Steps)
        {
            switch (step)
            {
                case { Verb: "remove", Item: Part part } when reader.IsPropped(part):
                    left.Add(part);
                    break;
                case { Verb: "fit", Item: Part part } when left.Contains(part):
                    Assert.True(reader.IsPropped(part), $"{job}, step {step.Number}: {step.Text}, without its prop");
                    break;
                case { Verb: "unsupport", Item: Part part }:
                    var open = reader.Machine.Joints.Where(joint => joint.Role == JointRole.Held && Holds(joint, part) && !reader.IsGone(joint) && !reader.IsWhole(joint));
                    Assert.True(!open.Any(), $"{job}, step {step.Number}: {step.Text}, with {string.Join(", ", open.Select(joint => joint.Name))} open");
                    break;
            }

            reader.Do(step);
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void The_head_of_each_card_says_what_is_live_when_it_is_taken_up(string job)
    {
        var reader = new PackReader(job, DemoLibrary.Plans[job]);
        foreach (var card in reader.Cards)
        {
            foreach (var head in card.QuerySelectorAll(".energies li"))
            {
                var energy = reader.Machine.Energies.OrderByDescending(energy => energy.Title.Length)
                    .First(energy => head.TextContent.Contains(energy.Title, StringComparison.Ordinal));
                Assert.Equal(reader.IsLive(energy), head.TextContent.Contains("LIVE", StringComparison.Ordinal));
            }

            foreach (var step in reader.Steps.Where(step => step.Card == card.Id))
            {
                reader.Do(step);
            }
        }
    }

    [Fact]
    public void The_demo_library_gives_all_of_this_something_to_hold()
    {
        var steps = Jobs.Select(job => job.Data).SelectMany(job => new PackReader(job, DemoLibrary.Plans[job]).Steps).ToList();

        Assert.True(steps.Count(step => step is { Verb: "restore", IsInTest: false }) > 20);
        Assert.True(steps.Count(step => step is { Verb: "restore", IsInTest: true }) > 4);
        Assert.Contains(steps, step => step is { Verb: "support", IsInRefit: true });
        Assert.Contains(steps, step => step.Verb == "verify");
    }

    private static bool Holds(Joint joint, Part part) => joint.Owner.IsWithin(part) != (joint.Other?.IsWithin(part) ?? false);

    /// <summary>The parts that the machine puts a joint behind, by its own words or those of what it lies in.</summary>
    private static IEnumerable<Part> Hiders(Joint joint)
    {
        var conditions = joint.Conditions.ToList();
        for (Part? part = joint.Owner; part is not null; part = part.Parent)
        {
            conditions.AddRange(part.Conditions);
        }

        return conditions.Where(condition => condition.State == NeededState.OutOfTheWay).Select(condition => (Part)condition.Item);
    }

    /// <summary>A pack, and the machine as it is after the steps done so far.</summary>
    private sealed class PackReader
    {
        private readonly Dictionary<Joint, int> _on = [];
        private readonly HashSet<Joint> _slack = [];
        private readonly HashSet<Part> _away = [];
        private readonly HashSet<Part> _propped = [];
        private readonly HashSet<MachineItem> _gone = [];
        private readonly HashSet<Energy> _off = [];
        private readonly HashSet<Energy> _back = [];
        private readonly ILookup<Energy, Part> _mayBeOpen;

        public PackReader(string job, Plan printed)
        {
            Machine = DemoLibrary.MachineOf(job);
            Machine.Joints.ToList().ForEach(joint => _on.Add(joint, joint.Count));
            var page = new HtmlParser().ParseDocument(WorkPack.Html(printed, PackTemplates.Standard).Text);
            using var plan = JsonDocument.Parse(WorkPack.Json(printed));
            var told = plan.RootElement.GetProperty("strip").EnumerateArray().Append(plan.RootElement.GetProperty("work"))
                .Concat(plan.RootElement.GetProperty("refit").EnumerateArray())
                .SelectMany(card => card.GetProperty("steps").EnumerateArray())
                .Select(step => step.Clone())
                .ToDictionary(step => step.GetProperty("number").GetInt32());
            Cards = [.. page.QuerySelectorAll("section.card").Where(card => card.QuerySelector(".step") is not null)];
            Steps = [.. Cards.SelectMany(card => card.QuerySelectorAll(".step").Select(row => Read(card, row, told)))];
            Assert.Equal(told.Keys.Order(), Steps.Select(step => step.Number));
            _gone.UnionWith(DemoLibrary.Discarded(job));
            _mayBeOpen = DemoLibrary.MayBeOpen(job).ToLookup(open => open.Energy, open => open.Part);
        }

        public Machine Machine { get; }

        public IReadOnlyList<IElement> Cards { get; }

        public IReadOnlyList<PrintedStep> Steps { get; }

        /// <summary>The energies that were isolated and have come back.</summary>
        public IEnumerable<Energy> Returned => _back.Where(IsLive);

        public bool IsLive(Energy energy) => !_off.Contains(energy);

        public bool IsPropped(Part part) => _propped.Contains(part);

        public bool IsWhole(Joint joint) => _on[joint] == joint.Count && !_slack.Contains(joint);

        public bool IsGone(Joint joint) => _gone.Contains(joint) || _gone.OfType<Part>().Any(part => joint.Owner.IsWithin(part) || joint.Other?.IsWithin(part) == true);

        public bool IsFitted(Part part) => _gone.Contains(part) || !_away.Contains(part);

        public bool IsInMachine(Joint joint) => !Around(joint.Owner).Any(_away.Contains) || (joint.Other is not null && !Around(joint.Other).Any(_away.Contains));

        /// <summary>What an author lets stay open when an energy comes back, and what is in the way of its own switch.</summary>
        public IEnumerable<Part> MayBeOpen(Energy energy) => _mayBeOpen[energy].Concat(energy.Conditions.Select(condition => condition.Item).OfType<Part>());

        public void Do(PrintedStep step)
        {
            switch (step)
            {
                case { Verb: "undo" or "release" or "unplug" or "disconnect" or "cut", Item: Joint joint }:
                    _on[joint] -= step.Count;
                    break;
                case { Verb: "fasten" or "snug" or "engage" or "plug" or "connect" or "renew", Item: Joint joint }:
                    _on[joint] += step.Count;
                    if (step.Verb == "snug")
                    {
                        _slack.Add(joint);
                    }

                    break;
                case { Verb: "loosen", Item: Joint joint }:
                    _slack.Add(joint);
                    break;
                case { Verb: "tighten", Item: Joint joint }:
                    _slack.Remove(joint);
                    break;
                case { Verb: "remove" or "aside", Item: Part part }:
                    _away.Add(part);
                    _propped.RemoveWhere(propped => step.Verb == "remove" && propped == part);
                    break;
                case { Verb: "fit" or "return", Item: Part part }:
                    _away.Remove(part);
                    break;
                case { Verb: "support", Item: Part part }:
                    _propped.Add(part);
                    break;
                case { Verb: "unsupport", Item: Part part }:
                    _propped.Remove(part);
                    break;
                case { Verb: "isolate", Item: Energy energy }:
                    _off.Add(energy);
                    _back.Remove(energy);
                    break;
                case { Verb: "restore", Item: Energy energy }:
                    _off.Remove(energy);
                    _back.Add(energy);
                    break;
            }
        }

        private static IEnumerable<Part> Around(Part? part)
        {
            for (; part is not null; part = part.Parent)
            {
                yield return part;
            }
        }

        private PrintedStep Read(IElement card, IElement row, Dictionary<int, JsonElement> told)
        {
            var number = int.Parse(row.Id!["step-".Length..], System.Globalization.CultureInfo.InvariantCulture);
            var step = told[number];
            var text = row.QuerySelector(".act b")!.TextContent;
            // The count stands in a column of its own.
            Assert.Equal(SamplePlan.Uncounted(step.GetProperty("text").GetString()!, step.GetProperty("count").GetInt32()), text);
            return new PrintedStep(
                number,
                card.Id!,
                step.GetProperty("verb").GetString()!,
                Machine.Items.GetValueOrDefault(step.GetProperty("item").GetString()!),
                step.GetProperty("count").GetInt32(),
                text,
                card.QuerySelector("h2")!.TextContent.StartsWith("Test: ", StringComparison.Ordinal),
                card.ClassList.Contains("refit"));
        }
    }

    private sealed record PrintedStep(int Number, string Card, string Verb, MachineItem? Item, int Count, string Text, bool IsInTest, bool IsInRefit);
}
