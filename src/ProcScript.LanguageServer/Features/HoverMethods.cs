using ProcScript.LanguageServer.Completing;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Protocol;
using ProcScript.LanguageServer.Reference;
using ProcScript.LanguageServer.Serving;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Features;

/// <summary>
/// Tells what the word under the pointer means: of an item of a machine also what it is like at this line of the procedure, of a word of the
/// language what the reference says of it.
/// </summary>
internal static class HoverMethods
{
    /// <summary>Adds the method.</summary>
    public static void Add(MethodTable methods, Workspace workspace, ReferenceWords reference) =>
        methods.Request<TextDocumentPositionParams, Hover?>("textDocument/hover", (parameters, cancellation) => workspace.AskTextAsync<Hover>(
            parameters.TextDocument,
            async (asked, judged) =>
            {
                var offset = asked.OffsetOf(parameters.Position);
                if (asked.Analysis.Names.At(asked.Path, offset) is not var (use, thing))
                {
                    return WordHover.At(asked, offset, reference);
                }

                if (IsProcedure(asked, thing))
                {
                    // It is told whether it is proven.
                    await judged.ConfigureAwait(false);
                }

                return Tell(asked, offset, use, thing) is { Length: > 0 } told ? new Hover(MarkupContent.Markdown(told), asked.Places.RangeOf(use.Span)) : null;
            },
            cancellation));

    private static bool IsProcedure(Asked asked, NamedThing thing) =>
        thing.Scope == NameScope.Library && asked.Analysis.Library.Trees[thing.Path].Root.Declarations.Any(one => one is ProcedureSyntax && one.Name.Text == thing.Name);

    private static string Tell(Asked asked, int offset, NameUse use, NamedThing thing) => thing.Scope switch
    {
        NameScope.Machine => Item(asked, offset, use, thing),
        NameScope.Library => Declaration(asked, thing),
        _ => Variable(asked, offset, thing.Name),
    };

    private static string Variable(Asked asked, int offset, string name)
    {
        var values = string.Join(", ", new ValueChoices(asked, offset, null).ValuesOf(name).Select(value => $"`{value.Name}`"));
        return $"variable `{name}`" + (values.Length > 0 ? $": {values}" : "");
    }

    private static string Item(Asked asked, int offset, NameUse use, NamedThing thing)
    {
        var step = StepAt(asked, offset);
        var trial = JobsInText.TrialAt(asked, offset);
        var machine = trial?.Procedure.Machine ?? JobsInText.MachineAt(asked, offset) ?? JobsInText.MachineNamed(asked, thing.Owner);
        if (machine is null)
        {
            return "";
        }

        // Of items with an index, the one that is written; else all of them are alike enough for the first to do.
        var written = asked.Tree.Text.Content[use.Span.Start..(IndexEnd(asked, use))];
        var item = machine.Items.GetValueOrDefault(written.Replace(" ", "", StringComparison.Ordinal))
            ?? machine.Items.OrderBy(one => one.Key, StringComparer.Ordinal).FirstOrDefault(one => one.Key.StartsWith(thing.Name + "[", StringComparison.Ordinal)).Value
            ?? machine.Items.GetValueOrDefault(thing.Name);
        return item is not null ? ItemWords.Tell(item, step is null ? null : trial?.Before(asked.Path, step.Span.Start))
            : machine.Places.FirstOrDefault(place => place.Name == thing.Name || place.Name.StartsWith(thing.Name + "[", StringComparison.Ordinal)) is { } place ? ItemWords.Tell(place)
            : machine.Options.FirstOrDefault(option => option.Name == thing.Name) is { } choice ? $"option `{choice.Name}`: {choice.Title}"
            : "";
    }

    private static int IndexEnd(Asked asked, NameUse use)
    {
        var content = asked.Tree.Text.Content;
        var end = use.Span.End < content.Length && content[use.Span.End] == '[' ? content.IndexOf(']', use.Span.End) : -1;
        return end < 0 ? use.Span.End : end + 1;
    }

    private static string Declaration(Asked asked, NamedThing thing)
    {
        var library = asked.Analysis.Library;
        if (library.Kinds.FirstOrDefault(kind => kind.Name == thing.Name && kind.Declared.Path == thing.Path) is { } kind)
        {
            return ItemWords.Tell(kind);
        }

        var reports = !IsProcedure(asked, thing) ? [] : asked.Analysis.Report.Procedures.Where(report => report.Procedure.Name == thing.Name && report.Procedure.Declared.Path == thing.Path).ToList();
        if (reports.Count > 0)
        {
            var state = reports.TrueForAll(report => report.IsProven) ? "proven" : "not proven";
            return $"procedure `{thing.Name}` on `{reports[0].Procedure.Machine.Name}`: **{reports[0].Procedure.Title}**\n\n{state}";
        }

        var declaration = library.Trees[thing.Path].Root.Declarations.FirstOrDefault(one => one.Name.Text == thing.Name);
        var sort = declaration is CatalogSyntax catalog ? catalog.Keyword.Text : declaration is MachineSyntax ? "machine" : "procedure";
        return $"{sort} `{thing.Name}`" + (declaration?.Title is { } title ? $": **{title.Value}**" : "");
    }

    /// <summary>The step of a stage or of the work that holds an offset.</summary>
    private static SyntaxNode? StepAt(Asked asked, int offset)
    {
        SyntaxNode? step = null;
        SyntaxNode? node = JobsInText.DeclarationAt(asked, offset);
        while (node is not null)
        {
            step = node is ActionSyntax or DiscardSyntax ? node : step;
            node = node.Children.FirstOrDefault(child => child.Span.Touches(offset));
        }

        return step;
    }
}
