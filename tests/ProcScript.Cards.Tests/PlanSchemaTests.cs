using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using ProcScript.Cards.Tests.Samples;

namespace ProcScript.Cards.Tests;

/// <summary>The published schema and the JSON that is written agree, judged by a schema library.</summary>
public sealed class PlanSchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromFile(Path.Combine(AppContext.BaseDirectory, "plan.schema.json"));

    [Theory]
    [InlineData(nameof(SamplePlan.Evaporator))]
    [InlineData(nameof(SamplePlan.Bare))]
    public void A_plan_is_valid(string name) => Assert.True(IsValid(JsonNode.Parse(WorkPack.Json(SamplePlan.Named(name)))!));

    [Fact]
    public void Every_plan_of_the_demo_library_is_valid() =>
        Assert.All(DemoLibrary.Plans, plan => Assert.True(IsValid(JsonNode.Parse(WorkPack.Json(plan.Value))!), plan.Key));

    public static TheoryData<string> Places => ["", "strip/0", "strip/0/steps/0", "strip/0/steps/0/source", "bags/0/contents/0", "map/nodes/0", "heaviestLift", "times"];

    [Theory]
    [MemberData(nameof(Places))]
    public void A_missing_an_unknown_and_a_wrong_value_are_refused(string place)
    {
        foreach (var spoil in new Action<JsonObject>[]
        {
            node => node.Remove(node.First().Key),
            node => node["added"] = 1,
            node => node[node.First().Key] = new JsonObject(),
        })
        {
            var document = JsonNode.Parse(WorkPack.Json(SamplePlan.Evaporator))!;
            var node = place.Split('/', StringSplitOptions.RemoveEmptyEntries)
                .Aggregate(document, (at, name) => at is JsonArray items ? items[int.Parse(name, null)]! : at[name]!);
            spoil(node.AsObject());
            Assert.False(IsValid(document));
        }
    }

    [Fact]
    public void Everything_in_the_schema_is_described()
    {
        var definitions = JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "plan.schema.json")))!["$defs"]!.AsObject();

        Assert.All(definitions, definition => Assert.NotEmpty((string)definition.Value!["description"]!));
        Assert.All(
            definitions.SelectMany(definition => definition.Value!["properties"]!.AsObject()),
            property => Assert.EndsWith(".", (string)property.Value!["description"]!, StringComparison.Ordinal));
    }

    private static bool IsValid(JsonNode document) => Schema.Evaluate(JsonSerializer.SerializeToElement(document)).IsValid;
}
