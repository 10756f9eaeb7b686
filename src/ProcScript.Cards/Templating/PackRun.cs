using System.Security.Cryptography;
using System.Text;
using ProcScript.Analysis.Crews;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans;
using ProcScript.Analysis.Settings;
using ProcScript.Cards.Crews;
using ProcScript.Cards.Labels;
using Scriban.Runtime;
using Scriban.Syntax;

namespace ProcScript.Cards.Templating;

/// <summary>Fills the templates in for one plan.</summary>
internal sealed class PackRun
{
    private const string Style = "pack.css";
    private const string LabelStyle = "labels.css";

    // In the order in which they run.
    private static readonly string[] Scripts = ["words.js", "photos.js", "pack.js", "search.js"];

    private readonly PackTemplates _templates;
    private readonly string _original;
    private readonly ScriptObject _values;

    private PackRun(Plan plan, PackTemplates templates, Notation notation, LabelSheet? labels, CrewPlan? crew = null)
    {
        _templates = templates;
        // With a crew that is known, its time is no guess any more.
        plan = crew is null ? plan : plan with { Times = plan.Times with { Crew = crew.Seconds, CrewSize = crew.People.Length } };
        _original = plan.TextsLanguage;
        _values = PackValues.Create(plan, notation);
        CrewValues.Add(_values, crew, PackLanguages.BookOf(plan), notation);
        // label_sheet: the sheet that the bag labels are printed on, in a document of their own; null where they stand in the pack.
        _values.SetValue("label_sheet", labels is null ? null : LabelValues.Sheet(labels), readOnly: true);
    }

    /// <summary>The HTML pack.</summary>
    public static PackText Html(Plan plan, PackTemplates templates, CardLayout layout, LabelSheet? labels, CrewPlan? crew) => Guarded(templates, () =>
    {
        PackRun run = new(plan, templates, Notation.Html, labels, crew);
        var style = run.Render(Style);
        var script = string.Concat(Scripts.Select(templates.Raw));
        var fault = EndsElement(Style, style, "</style")
            ?? Scripts.Select(name => EndsElement(name, templates.Raw(name), "</script") ?? EndsElement(name, templates.Raw(name), "<!--")).FirstOrDefault(fault => fault is not null);
        if (fault is not null)
        {
            return PackText.Of([fault]);
        }

        // apart: whether each card is printed on sheets of its own until somebody at the screen says otherwise.
        run._values.SetValue("apart", layout == CardLayout.Card, readOnly: true);
        run._values.SetValue("style", Inlined(style), readOnly: true);
        run._values.SetValue("script", Inlined(script), readOnly: true);
        return PackText.Of(Originals.InHtml(run.Render("pack.html"), run._original));
    });

    /// <summary>The Markdown pack.</summary>
    public static PackText Markdown(Plan plan, PackTemplates templates, LabelSheet? labels, CrewPlan? crew) =>
        Guarded(templates, () => PackText.Of(Originals.InMarkdown(new PackRun(plan, templates, Notation.Markdown, labels, crew).Render("pack.md"), plan.TextsLanguage)));

    /// <summary>The bag labels.</summary>
    public static PackText Labels(Plan plan, PackTemplates templates, LabelSheet sheet) => Guarded(templates, () =>
    {
        PackRun run = new(plan, templates, Notation.Html, sheet);
        run._values.SetValue("label_pages", LabelValues.Pages(plan, sheet), readOnly: true);
        var style = run.Render(LabelStyle);
        if (EndsElement(LabelStyle, style, "</style") is { } fault)
        {
            return PackText.Of([fault]);
        }

        run._values.SetValue("style", Inlined(style), readOnly: true);
        return PackText.Of(Originals.InHtml(run.Render("labels.html"), run._original));
    });

    private static PackText Guarded(PackTemplates templates, Func<PackText> render)
    {
        if (!templates.Faults.IsEmpty)
        {
            return PackText.Of(templates.Faults);
        }

        try
        {
            return render();
        }
        catch (ScriptRuntimeException failure)
        {
            return PackText.Of([TemplateFaults.Of(failure)]);
        }
    }

    private static TemplateFault? EndsElement(string name, string text, string tag) =>
        text.Contains(tag, StringComparison.OrdinalIgnoreCase) ? TemplateFaults.EndsElement(name, tag) : null;

    /// <summary>What stands in the page, and the hash by which the page's security policy lets it in.</summary>
    internal static ScriptObject Inlined(string text) => new()
    {
        ["text"] = new Markup(text),
        ["hash"] = new Markup($"sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}"),
    };

    private string Render(string name)
    {
        PackContext context = new(_templates, _values);
        return _templates.Parsed(name).Render(context);
    }
}
