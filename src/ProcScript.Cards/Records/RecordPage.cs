using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Analysis.Messages;
using ProcScript.Cards.Templating;
using ProcScript.Jobs.Closing;
using ProcScript.Jobs.Intake;
using ProcScript.Jobs.Standing;
using Scriban.Runtime;

namespace ProcScript.Cards.Records;

/// <summary>Writes the record of a job as papers to print and to file.</summary>
public static class RecordPage
{
    private const string Style = "as-done.css";

    /// <summary>The record as one HTML file with its photos, which asks for nothing outside itself.</summary>
    /// <param name="record">The record.</param>
    public static string Html(JobRecord record)
    {
        var values = Values(record);
        values["style"] = PackRun.Inlined(PackTemplates.Standard.Parsed(Style).Render(new PackContext(PackTemplates.Standard, values)));
        return PackTemplates.Standard.Parsed("as-done.html").Render(new PackContext(PackTemplates.Standard, values));
    }

    /// <summary>The record as Markdown; photos are named.</summary>
    /// <param name="record">The record.</param>
    public static string Markdown(JobRecord record) =>
        PackTemplates.Standard.Parsed("as-done.md").Render(new PackContext(PackTemplates.Standard, Values(record)));

    private static ScriptObject Values(JobRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        var book = PackLanguages.BookOf(record.Plan);
        return new ScriptObject
        {
            ["say"] = new MessageFunction(book),
            ["language"] = record.Plan.Language,
            ["head"] = new ScriptObject
            {
                ["name"] = record.Head.Name,
                ["title"] = record.Head.Title,
                ["machine"] = record.Head.MachineTitle,
                ["serial"] = record.Head.Serial,
                ["order"] = record.Head.Order,
                ["revision"] = record.Head.Revision,
            },
            ["opened"] = Line(record.Opened),
            ["closed"] = record.Closed is { } closed ? Line(closed) : null,
            ["open"] = new ScriptArray(record.Open),
            ["people"] = string.Join(", ", record.People),
            ["steps"] = new ScriptArray(record.Steps.Select(Line)),
            ["notes"] = new ScriptArray(record.Notes.Select(Line)),
            ["readings"] = new ScriptArray(record.Readings.Select(Reading)),
            ["fluids"] = new ScriptArray(record.Fluids.Select(Fluid)),
            ["deviations"] = new ScriptArray(record.Deviations.Select(Deviation)),
            ["photos"] = new ScriptArray(record.Photos.Select(Photo)),
            ["followUps"] = new ScriptArray(record.FollowUps),
            ["lines"] = record.Lines,
            ["lastHash"] = record.LastHash,
            ["damage"] = record.Damage,
        };
    }

    private static ScriptObject Line(RecordLine line) => new()
    {
        ["event"] = line.Event,
        ["step"] = line.Step,
        ["at"] = At(line.At),
        ["by"] = line.By,
        ["text"] = line.Text,
    };

    private static ScriptObject Reading(RecordReading reading)
    {
        var line = Line(reading.Line);
        line["value"] = reading.Value;
        line["limits"] = reading.Limits;
        line["good"] = reading.IsGood;
        return line;
    }

    private static ScriptObject Fluid(FluidBalance fluid) => new()
    {
        ["title"] = fluid.Title,
        ["nameplate"] = fluid.Nameplate,
        ["recovered"] = fluid.Recovered,
        ["charged"] = fluid.Charged,
        ["fillTo"] = fluid.FillTo,
        ["verdict"] = fluid.Verdict,
        ["right"] = fluid.IsRight,
    };

    private static ScriptObject Deviation(StatusDeviation deviation) => new()
    {
        ["event"] = deviation.Event,
        ["at"] = At(deviation.At),
        ["by"] = deviation.By,
        ["text"] = deviation.Text,
        ["means"] = new ScriptArray(deviation.Means),
    };

    private static ScriptObject Photo(RecordPhoto photo)
    {
        var line = Line(photo.Line);
        line["file"] = photo.File;
        line["problem"] = photo.Problem;
        line["data"] = photo.Content.IsEmpty ? "" : new Markup($"data:image/{TypeOf(photo.Content)};base64,{Convert.ToBase64String(photo.Content.AsSpan())}");
        return line;
    }

    private static string TypeOf(ImmutableArray<byte> content) => PhotoFile.EndingOf(content.AsSpan()) is "jpg" or null ? "jpeg" : PhotoFile.EndingOf(content.AsSpan())!;

    private static string At(DateTimeOffset at) => at.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
