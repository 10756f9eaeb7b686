using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ProcScript.Analysis.Plans;

namespace ProcScript.Analysis.Tests.Plans;

/// <summary>The revision goes by what a pack says, and by nothing else.</summary>
public sealed partial class PlanRevisionTests
{
    /// <summary>It follows from the title and the count beside it.</summary>
    private const string NewPartInWords = "/refit/steps/newParts/text";

    private static readonly Plan Sample = PlanOf.Text(SampleText.All);

    [Fact]
    public void It_is_short_and_the_same_each_time()
    {
        Assert.Matches("^[0-9a-f]{10}$", Sample.Revision);
        Assert.Equal(Sample.Revision, PlanOf.Text(SampleText.All).Revision);
    }

    [Theory]
    [InlineData("// A comment.\n")]
    [InlineData("\n\n")]
    [InlineData("clip spare_clip \"spare clip\"\n")]
    [InlineData("procedure other \"Another job\" on gearbox { stage \"Guard\" { strip guard } }\n")]
    public void What_no_pack_says_leaves_it_as_it_is(string added)
    {
        Assert.Equal(Sample.Revision, PlanOf.Text(SampleText.All + added).Revision);
        Assert.Equal(Sample.Revision, PlanOf.Text((added + SampleText.All).ReplaceLineEndings("\r\n"), procedure: added.StartsWith("procedure", StringComparison.Ordinal) ? 1 : 0).Revision);
    }

    [Theory]
    [InlineData("\"Open the drain.\"", "\"Open the drain slowly.\"")]
    [InlineData("torque 24 ± 2 N.m", "torque 25 ± 2 N.m")]
    [InlineData("photo \"Washers", "photo \"Two washers")]
    [InlineData("charge 2.0 ± 0.1 L", "charge 2.0 ± 0.2 L")]
    public void What_a_pack_says_otherwise_changes_it(string was, string now) =>
        Assert.NotEqual(Sample.Revision, PlanOf.Text(SampleText.All.Replace(was, now, StringComparison.Ordinal)).Revision);

    [Fact]
    public void The_files_that_a_pack_names_and_the_arguments_of_its_job_are_said_too()
    {
        const string Sides = """
            machine rig "Rig" { each side in left, right { part lid[side] "{side} lid" } }
            procedure p(side in left, right) "P" on rig { stage "Lid" { remove lid[side] } }
            """;

        Assert.NotEqual(Sample.Revision, PlanOf.Text(SampleText.All, "y.proc").Revision);
        Assert.NotEqual(PlanOf.Text(Sides, procedure: 0).Revision, PlanOf.Text(Sides, procedure: 1).Revision);
    }

    [Fact]
    public void Every_value_of_the_published_plan_is_in_it_but_itself_and_the_places_in_the_sources()
    {
        var written = JsonSerializer.Serialize(Sample, PlanJson.Published.Plan);
        var leaves = Leaves(JsonNode.Parse(written)!, "").ToList();
        Assert.True(leaves.Count > 500, $"only {leaves.Count} values");

        // One of each sort: the first title, the first torque.
        foreach (var path in leaves.DistinctBy(Sort))
        {
            var document = JsonNode.Parse(written)!;
            Change(document, path);
            var changed = PlanRevision.Of(document.Deserialize(PlanJson.Published.Plan)!);
            var isOutside = Sort(path) is "/revision" or "/language" or "/textsLanguage" or "/licensed" or "/procedure" or NewPartInWords || path.Contains("/source/", StringComparison.Ordinal) || ForReplay().IsMatch(path);
            Assert.True(isOutside == (changed == Sample.Revision), path);
        }
    }

    [Fact]
    public void What_a_plan_does_not_say_is_not_in_it()
    {
        var content = PlanRevision.Content(Sample);

        Assert.DoesNotContain(":\"\"", content, StringComparison.Ordinal);
        Assert.DoesNotContain(":[]", content, StringComparison.Ordinal);
        Assert.DoesNotMatch(":(0|false|null)[,}]", content);
    }

    /// <summary>What no paper prints: it is there for another program that replays the plan.</summary>
    [GeneratedRegex("^/(parameters|goalActions|items|rules)/|^/discards/.*/(item|after)$|/steps/[0-9]+/(position|needs|open|test)(/|$)")]
    private static partial Regex ForReplay();

    /// <summary>The names on the way to a value, without the places in lists.</summary>
    private static string Sort(string path) => string.Join('/', path.Split('/').Where(name => !int.TryParse(name, out _)));

    private static IEnumerable<string> Leaves(JsonNode? node, string path) => node switch
    {
        JsonObject members => members.SelectMany(member => Leaves(member.Value, $"{path}/{member.Key}")),
        JsonArray list => list.SelectMany((one, at) => Leaves(one, $"{path}/{at}")),
        null => [],
        _ => [path],
    };

    private static void Change(JsonNode document, string path)
    {
        var names = path.Split('/')[1..];
        var holder = names[..^1].Aggregate(document, (node, name) => node is JsonArray list ? list[int.Parse(name, null)]! : node[name]!);
        JsonNode was = holder is JsonArray items ? items[int.Parse(names[^1], null)]! : holder[names[^1]]!;
        JsonNode now = was.GetValueKind() switch
        {
            JsonValueKind.Number => JsonValue.Create((int)was.GetValue<double>() + 1),
            JsonValueKind.String => JsonValue.Create(was.GetValue<string>() + "x"),
            var kind => JsonValue.Create(kind != JsonValueKind.True),
        };
        if (holder is JsonArray list)
        {
            list[int.Parse(names[^1], null)] = now;
        }
        else
        {
            holder[names[^1]] = now;
        }
    }
}
