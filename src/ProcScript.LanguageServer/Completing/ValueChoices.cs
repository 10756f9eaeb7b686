using System.Collections.Immutable;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Completing;

/// <summary>Variables, their values, and options: what may stand in brackets and behind <c>when</c>.</summary>
/// <param name="asked">The document.</param>
/// <param name="offset">Where one types.</param>
/// <param name="machine">The machine that it is about.</param>
internal sealed class ValueChoices(Asked asked, int offset, Machine? machine)
{
    /// <summary>What may stand at the next place of an index, or of the arguments of a call.</summary>
    /// <param name="words">The sentence so far.</param>
    /// <param name="bracket">Which of them is the bracket.</param>
    public IEnumerable<(string Name, string Detail)> Within(ImmutableArray<string> words, int bracket)
    {
        var at = words.Skip(bracket).Count(word => word == ",");
        var name = bracket > 0 ? words[bracket - 1] : "";
        return Variables().Select(variable => (variable.Name, "variable"))
            .Concat((words[bracket] == "(" ? Arguments(name, at) : Indices(name, at)).Select(value => (value, "")))
            .DistinctBy(choice => choice.Item1);
    }

    /// <summary>What a <c>when</c> may ask for next: an option, a variable, or the value of one.</summary>
    /// <param name="words">Its test so far.</param>
    public IEnumerable<(string Name, string Detail)> OfTest(ImmutableArray<string> words) => words switch
    {
        [] => [.. Options(), .. Variables().Select(variable => (variable.Name, "variable"))],
        ["not"] => Options(),
        [var name, "is", ..] => ValuesOf(name),
        _ => [],
    };

    /// <summary>The options that a list of them does not name yet.</summary>
    public IEnumerable<(string Name, string Detail)> OptionsWithout(ImmutableArray<string> words) => Options().Where(option => !words.Contains(option.Item1));

    /// <summary>Whether there is a variable of that name.</summary>
    public bool IsVariable(string name) => Variables().Any(variable => variable.Name == name);

    /// <summary>The variable that takes a value, the innermost first; null where none does.</summary>
    public string? VariableFor(string value) =>
        Variables().Reverse().FirstOrDefault(variable => variable.Values?.Values.Any(one => one.Text == value) ?? false).Name;

    /// <summary>What loops go through elsewhere, the latest first; where there are none, an example.</summary>
    public IEnumerable<(string Name, string Detail)> LoopHeads() => Loops()
        .Select(each => $"{each.Variable.Text} in {string.Join(", ", each.Values.Values.Select(value => value.Text))}")
        .Distinct(StringComparer.Ordinal)
        .DefaultIfEmpty("side in left, right")
        .Select(head => (head, "once for each"));

    /// <summary>The values that a variable of that name has elsewhere, else those of the machine's indices.</summary>
    /// <param name="variable">Its name.</param>
    /// <param name="words">The values so far.</param>
    public IEnumerable<(string Name, string Detail)> ForVariable(string variable, ImmutableArray<string> words)
    {
        var known = Loops().Where(each => each.Variable.Text == variable).SelectMany(each => each.Values.Values).Select(value => value.Text);
        var indices = (machine?.Items.Values ?? []).OrderBy(item => item.Declared.Span.Start)
            .SelectMany(item => CanonicalName.Indices(item.Name));
        return known.Concat(indices).Distinct(StringComparer.Ordinal).Where(value => !words.Contains(value)).Select(value => (value, "value"));
    }

    /// <summary>The values that a variable takes.</summary>
    public IEnumerable<(string Name, string Detail)> ValuesOf(string name) =>
        Variables().LastOrDefault(variable => variable.Name == name).Values?.Values.Select(value => (value.Text, "")) ?? [];

    private IEnumerable<(string, string)> Options() => machine?.Options.Select(option => (option.Name, option.Title)) ?? [];

    /// <summary>The loops of the document and of the machine before the place, the latest first.</summary>
    private IEnumerable<EachSyntax> Loops()
    {
        var own = asked.Tree.Root.Declarations.Where(declaration => declaration.Span.Start < offset).SelectMany(declaration => declaration.DescendantsAndSelf());
        var others = machine is not null && machine.Declared.Path != asked.Path && asked.Analysis.Library.Trees.TryGetValue(machine.Declared.Path, out var tree)
            ? tree.Root.Declarations.SelectMany(declaration => declaration.DescendantsAndSelf())
            : [];
        return others.Concat(own).OfType<EachSyntax>()
            .Where(each => !each.Values.Values.IsEmpty && !(each.Span.Start <= offset && offset <= each.Values.Span.End && others.All(one => one != each)))
            .Reverse();
    }

    /// <summary>The variables in force, the outermost first.</summary>
    private IEnumerable<(string Name, ValuesSyntax? Values)> Variables()
    {
        if (JobsInText.DeclarationAt(asked, offset) is not { } declaration)
        {
            return [];
        }

        var parameters = declaration is ProcedureSyntax procedure ? procedure.Parameters : [];
        return parameters.Select(parameter => (parameter.Name.Text, (ValuesSyntax?)parameter.Values))
            .Concat(declaration.DescendantsAndSelf().OfType<EachSyntax>()
                .Where(each => each.Span.Start <= offset && offset <= each.Span.End)
                .Select(each => (each.Variable.Text, (ValuesSyntax?)each.Values)));
    }

    private IEnumerable<string> Arguments(string name, int at)
    {
        var called = asked.Analysis.Library.Procedures.FirstOrDefault(procedure => procedure.Name == name && procedure.Machine.Name == machine?.Name);
        var node = called is null
            ? null
            : asked.Analysis.Library.Trees[called.Declared.Path].Root.Declarations.OfType<ProcedureSyntax>().FirstOrDefault(one => one.Name.Span == called.Declared.Span);
        return node?.Parameters.ElementAtOrDefault(at)?.Values.Values.Select(value => value.Text) ?? [];
    }

    private IEnumerable<string> Indices(string name, int at) => (machine?.Items.Values ?? [])
        .OrderBy(item => item.Declared.Span.Start)
        .Select(item => item.Name)
        .Where(item => item.StartsWith(name + "[", StringComparison.Ordinal))
        .Select(item => item[(name.Length + 1)..^1].Split(',', StringSplitOptions.TrimEntries))
        .Where(indices => at < indices.Length)
        .Select(indices => indices[at])
        .Distinct(StringComparer.Ordinal);
}
