using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using ProcScript.Analysis.Comparing;
using ProcScript.Cards.Changes;

namespace ProcScript.Cards.Tests.Words;

public sealed class ChangeReportTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromFile(Path.Combine(AppContext.BaseDirectory, "change.schema.json"));

    private static readonly JobName Job = new("seat_out", "Take the *seat* out", "cab", ["air_seat"]);

    private static readonly LibraryChange Change = new()
    {
        Format = "1",
        Added = [],
        Dropped = [Job with { Job = "old" }],
        NowProven = [],
        NoLongerProven = [],
        NotCompared = [],
        Changed =
        [
            new JobChange
            {
                Name = Job,
                OldRevision = "aaaaaaaaaa",
                NewRevision = "bbbbbbbbbb",
                Times = new TimeChange(60, 600, 60, 300),
                Cover = [new ValueChange("goal", "", "remove <seat>")],
                Steps =
                [
                    new StepChange("changed", "strip", "Undo 4 × M10", 3, 4, "Seat", "Seat", [new ValueChange("how", "one\ntwo", "one\nthree")]),
                    new StepChange("dropped", "refit", "Fit the seat", 9, 0, "Seat", "", []),
                ],
                Lists = [new ListChange("tools", "added", "16 mm socket", "", "")],
                Alerts = [new AlertChange("weakened", "warning", "caution", "It falls.", "It falls.", 3, 4)],
                Safety =
                [
                    new SafetyChange("gone", "support", "seat", "seat", "support seat", ""),
                    new SafetyChange("weaker", "wait", "battery", "12 V battery", "60 s", "10 s"),
                ],
                Void = [new VoidPaper("Strip 1 of 2: Seat", "aaaaaaaaaa", OnlyNumbers: false), new VoidPaper("Bag 1 label: Seat", "aaaaaaaaaa", OnlyNumbers: true)],
            },
        ],
    };

    [Fact]
    public void The_text_says_all_of_it() => Assert.Equal(
        """
        Jobs dropped: their packs are void
            - old on cab with air_seat, Take the *seat* out
        seat_out on cab with air_seat, Take the *seat* out: revision aaaaaaaaaa → bbbbbbbbbb
          Safety
            ! gone, though what it was for is still done: seat, support: support seat
            ! weaker: 12 V battery, wait: 60 s → 10 s
          Alerts
            ! weaker, warning → caution before step 4: It falls.
          Cover
            ~ goal: remove <seat> (none before)
            ~ time: 1 min → 10 min one step after the other, 1 min → 5 min with a crew
          Strip
            ~ step 4, Seat: Undo 4 × M10
              how: two → three
          Refit
            - old step 9, Seat: Fit the seat
          Lists
            + tools: 16 mm socket
          Void on paper of revision aaaaaaaaaa
            Strip 1 of 2: Seat
            Bag 1 label: Seat (only numbers)
        1 job dropped, 1 pack says otherwise, 2 printed pages and labels are void, 2 precautions are gone or weaker, 1 alert is gone or weaker.

        """,
        ChangeReport.Text(Change));

    [Fact]
    public void In_Markdown_an_authors_words_are_no_markup()
    {
        var markdown = ChangeReport.Markdown(Change);

        Assert.Contains("### seat_out on cab with air_seat, Take the \\*seat\\* out: revision", markdown, StringComparison.Ordinal);
        Assert.Contains("- changed: goal: remove \\<seat> (none before)\n", markdown, StringComparison.Ordinal);
        Assert.Contains("\n**Alerts**\n\n- **look:** weaker", markdown, StringComparison.Ordinal);
    }

    [Fact]
    public void The_JSON_is_valid_and_a_spoilt_one_is_not()
    {
        var document = JsonNode.Parse(ChangeReport.Json(Change))!;
        Assert.True(Schema.Evaluate(JsonSerializer.SerializeToElement(document)).IsValid);

        document["changed"]![0]!["steps"]![0]!.AsObject().Remove("kind");
        Assert.False(Schema.Evaluate(JsonSerializer.SerializeToElement(document)).IsValid);
    }

    [Fact]
    public void Where_nothing_is_otherwise_one_sentence_says_so() => Assert.Equal(
        "No pack says otherwise.\n",
        ChangeReport.Text(Change with { Dropped = ImmutableArray<JobName>.Empty, Changed = [] }));
}
