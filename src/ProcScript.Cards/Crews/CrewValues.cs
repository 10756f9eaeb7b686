using System.Text.Json;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Messages;
using ProcScript.Cards.Templating;
using Scriban.Runtime;

namespace ProcScript.Cards.Crews;

/// <summary>What a template can name of who does what: <c>crew</c>, in the form and with the names of the published JSON, and a few functions on it.</summary>
internal static class CrewValues
{
    /// <summary>Adds the values: null where the pack is for nobody in particular.</summary>
    public static void Add(ScriptObject values, CrewPlan? crew, Wordbook book, Notation notation)
    {
        // crew: who does what. crew_step NUMBER: the step of it; null where there is none. crew_clock SECONDS: since the beginning. crew_drawings: the timeline.
        values.SetValue("crew", null, readOnly: true);
        if (crew is null)
        {
            return;
        }

        ScriptObject document = [];
        document.Import(JsonSerializer.SerializeToElement(crew, CrewJson.Published.CrewPlan));
        document.IsReadOnly = true;
        var steps = ((ScriptArray)document["steps"]!).Cast<ScriptObject>().ToDictionary(step => Convert.ToInt32(step["step"], System.Globalization.CultureInfo.InvariantCulture));
        values.SetValue("crew", document, readOnly: true);
        values.SetValue("crew_step", DelegateCustomFunction.CreateFunc<int, ScriptObject?>(number => steps.GetValueOrDefault(number)), readOnly: true);
        values.SetValue("crew_clock", DelegateCustomFunction.CreateFunc<double, string>(CrewClock.Of), readOnly: true);
        values.SetValue("crew_drawings", new ScriptArray(notation == Notation.Html ? CrewDrawing.Strips(crew, book).Select(strip => new Markup(strip)) : []), readOnly: true);
    }
}
