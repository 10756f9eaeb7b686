using System.Collections;
using System.Globalization;
using System.Text.Json;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Figures;
using ProcScript.Cards.Maps;
using ProcScript.Cards.Prose;
using ProcScript.Cards.Words;
using Scriban.Runtime;

namespace ProcScript.Cards.Templating;

/// <summary>What a template can name: <c>plan</c>, in the form and with the names of the published JSON, and a few functions on it.</summary>
internal static class PackValues
{
    /// <summary>Makes the values for one plan.</summary>
    public static ScriptObject Create(Plan plan, Notation notation)
    {
        ScriptObject document = [];
        document.Import(JsonSerializer.SerializeToElement(plan, PlanJson.Published.Plan));
        document.IsReadOnly = true;

        var pictures = PackPictures.Of(plan);
        StepLinks links = new(notation);
        var book = PackLanguages.BookOf(plan);
        MessageLinks cards = new(book, notation, plan);
        ScriptObject values = new()
        {
            // say KEY, say KEY { name: value }: a message in the language of the plan.
            ["say"] = new MessageFunction(book),
            // say_plain KEY: the same as a text to compare with another. joined TEXTS: texts and markup in a row.
            ["say_plain"] = Function<string, string>(key => book.Say(key)),
            ["joined"] = Function<IEnumerable, Markup>(texts => new Markup(string.Join("; ", texts.Cast<object>().Select(text => text as Markup ?? new Markup(notation.Escape((string)text)))))),
            // turns_of TURNS: what steps do to an energy. and_list TEXTS: several things in a row. which_others WHICH: the look-alikes of a piece.
            ["turns_of"] = Function<IEnumerable, Markup>(turns => new Markup(string.Join(", ", turns.Cast<ScriptObject>().Select(turn =>
                $"{notation.Escape(EnergyWords.Turn((string)turn["from"]!, (string)turn["state"]!, book))} {links.Number(Convert.ToInt32(turn["step"], CultureInfo.InvariantCulture)).Text}")))),
            ["and_list"] = Function<IEnumerable, string>(texts => book.And([.. texts.Cast<string>()])),
            ["which_others"] = Function<ScriptObject, string>(which => string.Join(", ", ((ScriptArray)which["not"]!).Cast<ScriptObject>().Select(other =>
                book.Say("step.which-other", ("piece", other["piece"]!), ("bag", other["bag"]!))))),
            // energy_card NUMBER, hand_over_card STEP: links to where an energy is made safe and to where the job is handed over.
            ["energy_card"] = Function<int, Markup>(cards.Energy),
            ["hand_over_card"] = Function<int, Markup>(cards.HandOver),
            // usual_mark: the mark of what is usual. page_number: the number of a page and of all pages, for a style sheet. words: those of the script.
            ["usual_mark"] = cards.Usual,
            ["page_number"] = new Markup(MessageMarkup.PageNumber(book)),
            ["words"] = ScriptWords.Of(book),
            // prose TEXT: an author's Markdown, made safe for the document.
            ["prose"] = Function<string, Markup>(notation == Notation.Html ? Html : Markdown),
            // indent MARKUP N, quoted MARKUP: its lines after the first set in by N blanks, or by the mark of a Markdown quote.
            ["indent"] = DelegateCustomFunction.CreateFunc<Markup, int, Markup>((text, columns) => Continued(text, new string(' ', columns))),
            // below MARKUP: on lines of its own where it begins with a list or the like and would be lost behind other words.
            ["below"] = Function<Markup, Markup>(text => ProseMarkdown.BeginsBlock(text.Text) ? new Markup("\n\n" + text.Text) : text),
            ["quoted"] = Function<Markup, Markup>(text => Continued(text, "> ")),
            // duration SECONDS, given_duration SECONDS, mass KILOGRAMS, mass_in_pounds KILOGRAMS, numbers STEPS: in words. A duration is an
            // estimate and is rounded; a given one is somebody's figure and is not.
            ["duration"] = Function<double, string>(Durations.InWords),
            // duration_parts WHOLE PARTS: the parts of an estimate, which add up to it.
            ["duration_parts"] = DelegateCustomFunction.CreateFunc<double, IEnumerable, ScriptArray>((whole, parts) =>
                new ScriptArray(Durations.PartsInWords(whole, [.. parts.Cast<object>().Select(part => Convert.ToDouble(part, CultureInfo.InvariantCulture))]))),
            ["given_duration"] = Function<double, string>(Durations.Exact),
            ["mass"] = Function<double, string>(kilograms => Masses.InWords(kilograms, book.Numbers)),
            ["mass_in_pounds"] = Function<double, string>(kilograms => Masses.InPounds(kilograms, book.Numbers)),
            ["numbers"] = Function<IEnumerable, string>(steps => StepNumbers.InWords(steps.Cast<object>().Select(step => Convert.ToInt32(step, CultureInfo.InvariantCulture)))),
            // step_no STEP, step_nos STEPS: numbers that lead to the steps; linked TEXT STEPS: a text in which they do.
            ["step_no"] = Function<int, Markup>(links.Number),
            ["step_nos"] = Function<IEnumerable, Markup>(links.Numbers),
            ["linked"] = DelegateCustomFunction.CreateFunc<object, IEnumerable, Markup>(links.In),
            // uncounted TEXT COUNT: what a step says, without its count.
            ["uncounted"] = DelegateCustomFunction.CreateFunc<string, int, string>(Counts.Without),
            // safety_word ACTION: the action of a line of making safe or of returning to service, as it is headed.
            ["safety_word"] = Function<string, string>(action => SafetyWords.Of(action, book)),
            // energy_word STATE: how an energy stands, as a card prints it large. turn_words FROM STATE: what a step does to it.
            ["energy_word"] = Function<string, string>(state => EnergyWords.State(state, book)),
            ["turn_words"] = DelegateCustomFunction.CreateFunc<string, string, string>((from, state) => EnergyWords.Turn(from, state, book)),
            // bag_of NUMBER: the bag of that number; cards that take up a job keep the numbers that are written on its bags.
            ["bag_of"] = Function<int, ScriptObject>(number =>
                ((ScriptArray)document["bags"]!).Cast<ScriptObject>().First(bag => Convert.ToInt32(bag["number"], CultureInfo.InvariantCulture) == number)),
            // bags_of STEPS: the bags that they fill or empty, each once.
            ["bags_of"] = Function<IEnumerable, ScriptArray>(steps =>
                new ScriptArray(steps.Cast<ScriptObject>().SelectMany(step => (ScriptArray)step["bags"]!).Distinct())),
            // picture_data FILE: a picture as an address that holds it; picture_name FILE: the file beside a text that holds it. Both empty without.
            ["picture_data"] = Function<string, Markup>(file => new Markup(pictures.DataOf(file))),
            ["picture_name"] = Function<string, Markup>(file => new Markup(pictures.NameOf(file))),
            // order_drawing PATTERN COUNT: the order of tightening as a drawing.
            ["order_drawing"] = DelegateCustomFunction.CreateFunc<string, int, Markup>((pattern, count) => new Markup(TighteningDrawing.Svg(pattern, count, book))),
            // licensed: the sorts of licensed work that the job seems to touch.
            ["licensed"] = new ScriptArray(plan.Licensed),
            // map_rows: the map in words, a row a part.
            ["map_rows"] = new ScriptArray(MapRow.Of(plan.Map, book).Select(Row)),
        };
        // has_originals: whether something of the author's is not translated.
        values.SetValue("has_originals", plan.TextsLanguage.Length > 0 && WorkPack.Json(plan).Contains("\\u2068", StringComparison.OrdinalIgnoreCase), readOnly: true);
        values.SetValue("plan", document, readOnly: true);
        // steps_done: how many steps were done before the cards were made. is_done STEP: whether one of them was.
        var done = plan.Strip.Append(plan.Work).SelectMany(stage => stage.Steps).Where(step => step.IsDone).Select(step => step.Number).ToHashSet();
        values.SetValue("steps_done", done.Count, readOnly: true);
        values.SetValue("is_done", Function<int, bool>(done.Contains), readOnly: true);
        if (notation == Notation.Html)
        {
            values.SetValue("map_drawings", new ScriptArray(MapDrawing.Sheets(plan.Map, book).Select(sheet => new Markup(sheet))), readOnly: true);
        }

        return values;
    }

    private static ScriptObject Row(MapRow row) => new()
    {
        ["title"] = row.Title,
        ["is_goal"] = row.IsGoal,
        ["move"] = row.Move,
        ["step"] = row.Step,
        ["hidden_by"] = string.Join(", ", row.HiddenBy),
        ["hides"] = string.Join(", ", row.Hides),
    };

    private static DelegateCustomFunction Function<TIn, TOut>(Func<TIn, TOut> function) => DelegateCustomFunction.CreateFunc(function);

    private static Markup Html(string prose) => new(ProseHtml.Render(prose));

    private static Markup Markdown(string prose) => new(ProseMarkdown.Render(prose));

    private static Markup Continued(Markup text, string start) =>
        new(string.Join('\n', text.Text.Split('\n').Select((line, at) => at == 0 ? line : (start + line).TrimEnd(' '))));
}
