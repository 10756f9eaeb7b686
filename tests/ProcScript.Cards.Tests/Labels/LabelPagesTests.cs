using System.Collections.Immutable;
using CsCheck;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards.Labels;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Cards.Tests.Labels;

/// <summary>Every bag has its label, all of it is on it, and every label is on the sheet.</summary>
public sealed class LabelPagesTests
{
    public static TheoryData<LabelStock> Stocks => [.. LabelSheet.All.Select(sheet => sheet.Stock)];

    [Fact]
    public void Every_choice_but_plain_paper_has_a_sheet_named_by_the_millimetres_of_its_labels()
    {
        foreach (var (word, stock) in SettingsTable.Labels.Words)
        {
            var sheet = LabelSheet.Of(stock);
            Assert.Equal(word, sheet is null ? "plain" : FormattableString.Invariant($"{sheet.Width:0.#}x{sheet.Height:0.#}"));
        }
    }

    [Theory]
    [MemberData(nameof(Stocks))]
    public void The_labels_lie_on_the_sheet_and_apart(LabelStock stock)
    {
        var sheet = LabelSheet.Of(stock)!;

        Assert.True(sheet.PitchX >= sheet.Width && sheet.PitchY >= sheet.Height);
        Assert.InRange(sheet.Left, 0, 10);
        Assert.InRange(sheet.Top, 0, 20);
        Assert.InRange(sheet.Left + ((sheet.Columns - 1) * sheet.PitchX) + sheet.Width, sheet.Width, sheet.PageWidth + 1e-9);
        Assert.InRange(sheet.Top + ((sheet.Rows - 1) * sheet.PitchY) + sheet.Height, sheet.Height, sheet.PageHeight + 1e-9);
    }

    [Fact]
    public void Nothing_that_is_in_a_bag_is_lost_or_told_twice_and_no_place_is_used_twice() => Gen.Select(Bags, Gen.Int[0, LabelSheet.All.Length - 1].Select(at => LabelSheet.All[at])).Sample((bags, sheet) =>
    {
        var labels = LabelPages.Of(bags, sheet);

        Assert.Equal(
            bags.SelectMany(bag => bag.Contents.Select((_, line) => (bag.Number, line))),
            labels.SelectMany(label => Enumerable.Range(label.First, label.Count).Select(line => (label.Bag.Number, line))));
        Assert.Equal(labels.Length, labels.Select(label => (label.Sheet, label.Column, label.Row)).Distinct().Count());
        Assert.All(labels, label => Assert.True(label.Column < sheet.Columns && label.Row < sheet.Rows));
        Assert.All(labels.GroupBy(label => label.Bag.Number), bag => Assert.Equal(Enumerable.Range(1, bag.First().Parts), bag.Select(label => label.Part)));
    });

    [Fact]
    public void A_label_says_what_it_is_for()
    {
        var plan = SamplePlan.Evaporator with { Bags = [SamplePlan.Evaporator.Bags[0] with { Side = "left" }] };

        var text = WorkPack.Labels(plan, PackTemplates.Standard, LabelSheet.All[0]);

        Assert.True(text.Succeeded, string.Join('\n', text.Faults));
        var line = plan.Bags[0].Contents[0];
        Assert.All(
            new[] { "Bag 1", "left", plan.Title, plan.MachineTitle, plan.Bags[0].Stage, $"{line.Count} ×", $"back at {line.RefitStep}", "Work order", "Date", plan.Revision },
            word => Assert.Contains(word, text.Text, StringComparison.Ordinal));
    }

    [Fact]
    public void The_pack_has_the_labels_before_the_strip_or_says_where_they_are()
    {
        var plain = WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text;
        var stock = WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard, labels: LabelStock.A4Of24).Text;

        Assert.InRange(plain.IndexOf("id=\"bags\"", StringComparison.Ordinal), 1, plain.IndexOf("id=\"strip-1\"", StringComparison.Ordinal));
        Assert.DoesNotContain("labels.html", plain, StringComparison.Ordinal);
        Assert.Contains("labels.html", stock, StringComparison.Ordinal);
        Assert.Contains("70 × 36 mm, 3 × 8", stock, StringComparison.Ordinal);
        Assert.DoesNotContain("Work order</span>", stock, StringComparison.Ordinal);
    }

    private static readonly Gen<ImmutableArray<PlanBag>> Bags = Gen.Select(Gen.Char['a', 'z'].Array[1, 60], Gen.Int[1, 99]).Array[0, 12].Array[0, 40].Select(bags => bags.Select((lines, bag) => new PlanBag(
        bag + 1,
        "Stage",
        [.. lines.Select(line => new PlanBagLine(new string(line.Item1), line.Item2, "panel", 1, 2))],
        2,
        "")).ToImmutableArray());
}
