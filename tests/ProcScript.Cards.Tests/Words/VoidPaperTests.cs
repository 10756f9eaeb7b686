using System.Collections.Immutable;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ProcScript.Analysis;
using ProcScript.Analysis.Comparing;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Changes;
using ProcScript.Cards.Tests.Samples;
using ProcScript.Model.Sources;

namespace ProcScript.Cards.Tests.Words;

/// <summary>A page is void exactly when it is printed otherwise.</summary>
public sealed class VoidPaperTests
{
    private const string Text =
        """
        tool key "13 mm key"
        tool wrench "16 mm key"
        fastener m8 "M8 bolt" { thread M8x1.25 length 25 mm grade 8.8 drive key torque 22 ± 2 N.m }
        fastener m10 "M10 bolt" { thread M10x1.5 length 30 mm grade 8.8 drive wrench torque 44 ± 4 N.m }
        clip pin "pin" { spare 10 % }
        machine press "Press" {
          part cover "cover" { mass 2 kg held by 4 m8 as cover_bolts }
          part guard "guard" { behind cover held by 2 m10 as guard_bolts held by 4 pin as guard_pins }
        }
        procedure guard_off "Take the guard off" on press {
          stage "Cover" {
            undo cover_bolts
            remove cover
          }
          stage "Guard" {
            warning "The edge cuts off a finger. Wear gloves."
            release guard_pins
            undo guard_bolts
            remove guard
          }
          refit { check "The guard does not rattle." after fit guard }
        }

        """;

    private static readonly string[] Seen = ["cover", "before", "make-safe", "", "work", "close-out", "map"];

    [Fact]
    public void A_torque_voids_its_own_card_and_no_card_of_the_strip()
    {
        var papers = Void("torque 22 ± 2", "torque 24 ± 2");

        Assert.Contains(papers, paper => paper is { Paper: "Refit 2 of 2: Cover", OnlyNumbers: false });
        Assert.DoesNotContain(papers, paper => paper.Paper.StartsWith("Strip", StringComparison.Ordinal));
        Assert.All(papers, paper => Assert.Equal(PlanOf(Text).Revision, paper.Revision));
    }

    [Fact]
    public void A_step_that_comes_voids_its_card_and_of_others_only_numbers()
    {
        var papers = Void("    undo cover_bolts\n", "    task \"Wipe the cover.\"\n    undo cover_bolts\n");

        Assert.Contains(papers, paper => paper is { Paper: "Strip 1 of 2: Cover", OnlyNumbers: false });
        Assert.Contains(papers, paper => paper is { Paper: "Strip 2 of 2: Guard", OnlyNumbers: true });
    }

    [Theory]
    [InlineData("\"The guard does not rattle.\"", "\"The guard is quiet.\"", "Refit 1 of 2: Guard")]
    [InlineData("stage \"Cover\"", "stage \"Lid\"", "Strip 1 of 2: Cover", "Refit 2 of 2: Cover")]
    [InlineData("held by 2 m10", "held by 3 m10", "Strip 2 of 2: Guard")]
    [InlineData("stage \"Cover\" {", "ppe \"helmet\"\n  stage \"Cover\" {", "Strip 1 of 2: Cover", "Strip 2 of 2: Guard", "Refit 1 of 2: Guard", "Refit 2 of 2: Cover")]
    public void What_is_printed_otherwise_is_void(string old, string fresh, params string[] papers) =>
        Assert.Superset(papers.ToHashSet(), Void(old, fresh).Select(paper => paper.Paper).ToHashSet());

    [Fact]
    public void The_title_stands_in_the_margin_of_every_page()
    {
        var papers = Void("\"Take the guard off\"", "\"Take off the guard\"").Select(paper => paper.Paper).ToList();

        Assert.Equal(Pages(PlanOf(Text)).Count, papers.Count);
    }

    /// <summary>Texts and figures of the demo library are changed, one at a time; what the browser's parser reads of the pages says what is void.</summary>
    [Slow]
    [Fact]
    public void No_page_is_missed_and_none_is_void_needlessly()
    {
        var all = DemoLibrary.Files.Keys.Order(StringComparer.Ordinal).SelectMany(path => Edits(path, DemoLibrary.Files[path])).ToList();
        var wanted = Depth.Of(100, few: 12);
        var edits = Enumerable.Range(0, wanted).Select(i => all[(int)((long)i * all.Count / wanted)]).ToList();
        var before = DemoLibrary.Plans;
        Dictionary<string, Dictionary<string, string>> pages = [];
        var (changed, papers) = (0, 0);
        foreach (var (path, text) in edits)
        {
            var after = DemoLibrary.PlansWith(path, text);
            foreach (var (job, old) in before.Where(one => after.ContainsKey(one.Key) && after[one.Key].Revision != one.Value.Revision))
            {
                var was = pages.TryGetValue(job, out var known) ? known : pages[job] = Pages(old);
                var now = Pages(after[job]);
                var expected = was.Where(page => now.GetValueOrDefault(page.Key) != page.Value).Select(page => page.Key).Order(StringComparer.Ordinal);
                var found = PrintedPapers.Void(old, after[job]).Select(paper => IdOf(paper.Paper)).Order(StringComparer.Ordinal);
                Assert.True(expected.SequenceEqual(found), $"{path}, {job}: expected {string.Join(", ", expected)}; found {string.Join(", ", found)}");
                changed++;
                papers += found.Count();
            }
        }

        Assert.True(changed >= wanted / 2 && papers > changed, $"{changed} packs of {edits.Count} edits, {papers} papers");
    }

    /// <summary>Every text with another word, and every torque with another figure.</summary>
    private static IEnumerable<(string Path, string Text)> Edits(string path, string text)
    {
        for (var at = text.IndexOf('"', StringComparison.Ordinal); at >= 0; at = text.IndexOf('"', text.IndexOf('"', at + 1) + 1))
        {
            yield return (path, text.Insert(at + 1, "Other "));
        }

        for (var at = text.IndexOf(" ± ", StringComparison.Ordinal); at >= 0; at = text.IndexOf(" ± ", at + 1, StringComparison.Ordinal))
        {
            yield return (path, text.Insert(at, "1"));
        }
    }

    private static ImmutableArray<VoidPaper> Void(string old, string fresh) =>
        PrintedPapers.Void(PlanOf(Text), PlanOf(Text.Replace(old, fresh, StringComparison.Ordinal)));

    private static Plan PlanOf(string text) => Assert.Single(LibraryCheck.Run(MemorySourceStore.Of("x.proc", text)).Procedures).CreatePlan()!;

    /// <summary>What a browser's parser reads of each page and label, by what it is called in the file.</summary>
    private static Dictionary<string, string> Pages(Plan plan)
    {
        var html = new HtmlParser().ParseDocument(WorkPack.Html(plan, PackTemplates.Standard).Text);
        var style = string.Concat(html.QuerySelectorAll("style").Select(one => one.TextContent));
        var margin = string.Concat(style.Split('\n').Where(line => line.TrimStart().StartsWith("@top-", StringComparison.Ordinal) || line.TrimStart().StartsWith("@bottom-", StringComparison.Ordinal)));
        var pages = html.QuerySelectorAll("section.card").Where(one => one.Id != "bags").ToDictionary(one => one.Id!, one => Read(one) + margin);
        foreach (var label in html.QuerySelectorAll("li.label"))
        {
            pages[label.Id!] = Read(label);
        }

        return pages.ToDictionary(page => page.Key, page => page.Value.Replace(plan.Revision, "", StringComparison.Ordinal));

        static string Read(IElement element) => string.Join(' ', element.TextContent.Split(default(char[]), StringSplitOptions.RemoveEmptyEntries))
            + string.Concat(element.QuerySelectorAll("img, svg").Select(one => one.GetAttribute("src") ?? one.InnerHtml));
    }

    private static string IdOf(string paper) => paper switch
    {
        "Cover" => Seen[0],
        "Before you start" => Seen[1],
        "Make safe" => Seen[2],
        "Close out" => Seen[5],
        "Map" => Seen[6],
        _ when paper.StartsWith("Hand-over", StringComparison.Ordinal) => $"hand-over-{paper.Split(' ')[^1]}",
        _ when paper.StartsWith("Work", StringComparison.Ordinal) => Seen[4],
        _ => $"{paper.Split(' ')[0].ToLowerInvariant()}-{paper.Split(' ')[1]}",
    };
}
