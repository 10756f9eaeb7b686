using System.Text.Json;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Cards.Tests;

public class WorkPackTests
{
    public static TheoryData<string> Plans => [nameof(SamplePlan.Evaporator), nameof(SamplePlan.Bare)];

    [Theory]
    [MemberData(nameof(Plans))]
    public void Standard_templates_fill_in_without_a_fault(string name)
    {
        var plan = SamplePlan.Named(name);

        Assert.Empty(WorkPack.Html(plan, PackTemplates.Standard).Faults);
        Assert.Empty(WorkPack.Markdown(plan, PackTemplates.Standard).Faults);
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_same_plan_gives_the_same_characters(string name)
    {
        var plan = SamplePlan.Named(name);

        Assert.Equal(WorkPack.Html(plan, PackTemplates.Standard).Text, WorkPack.Html(plan, PackTemplates.Standard).Text);
        Assert.Equal(WorkPack.Markdown(plan, PackTemplates.Standard).Text, WorkPack.Markdown(plan, PackTemplates.Standard).Text);
        Assert.Equal(WorkPack.Json(plan), WorkPack.Json(plan));
    }

    [Fact]
    public void Lines_end_with_a_line_feed_alone()
    {
        string[] documents =
        [
            WorkPack.Html(SamplePlan.Evaporator, PackTemplates.Standard).Text,
            WorkPack.Markdown(SamplePlan.Evaporator, PackTemplates.Standard).Text,
            WorkPack.Json(SamplePlan.Evaporator),
        ];

        Assert.All(documents, document => Assert.DoesNotContain('\r', document));
        Assert.All(documents, document => Assert.EndsWith("\n", document, StringComparison.Ordinal));
    }

    [Fact]
    public void Json_names_are_in_camel_case_and_letters_stand_for_themselves()
    {
        var json = WorkPack.Json(SamplePlan.Evaporator);

        using var document = JsonDocument.Parse(json);
        Assert.Equal("operator seat", document.RootElement.GetProperty("heaviestLift").GetProperty("part").GetString());
        Assert.Contains("M10 × 30 bolt", json, StringComparison.Ordinal);
    }
}
