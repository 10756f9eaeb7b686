using System.Collections.Immutable;
using ProcScript.LanguageServer.Jobs;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Model.Machines;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Features;

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

    /// <summary>What a <c>when</c> may ask next: for an option, or for the value of a variable.</summary>
    public IEnumerable<(string Name, string Detail)> OfWhen(ImmutableArray<string> words) => words switch
    {
        ["when"] => [.. Options(), .. Variables().Select(variable => (variable.Name, "variable")), ("not", "where the machine has it not")],
        ["when", "not"] => Options(),
        ["when", var name] when Variables().Any(variable => variable.Name == name) => [("is", "a value")],
        ["when", var name, "is"] => [.. ValuesOf(name), ("not", "any other value")],
        ["when", var name, "is", "not"] => ValuesOf(name),
        _ => [],
    };

    /// <summary>What may follow the machine of a procedure: which of its options it has to have, or must not have.</summary>
    public IEnumerable<(string Name, string Detail)> OfProcedure(ImmutableArray<string> words) => words[^1] switch
    {
        "with" or "without" or "," => Options().Where(option => !words.Contains(option.Item1)),
        _ => new[] { ("with", "only machines that have an option"), ("without", "only machines that have it not") }.Where(word => !words.Contains(word.Item1)),
    };

    /// <summary>The values that a variable takes.</summary>
    public IEnumerable<(string Name, string Detail)> ValuesOf(string name) =>
        Variables().LastOrDefault(variable => variable.Name == name).Values?.Values.Select(value => (value.Text, "")) ?? [];

    private IEnumerable<(string, string)> Options() => machine?.Options.Select(option => (option.Name, option.Title)) ?? [];

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
