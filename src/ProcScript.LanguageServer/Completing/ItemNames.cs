using ProcScript.LanguageServer.Protocol;
using ProcScript.Model.Machines;

namespace ProcScript.LanguageServer.Completing;

/// <summary>Items as one writes them: where a variable stands for the index, all that it takes in turn are one.</summary>
/// <param name="values">The variables in force.</param>
internal sealed class ItemNames(ValueChoices values)
{
    /// <summary>The items to choose from, each name once.</summary>
    public IEnumerable<CompletionItem> Of(IEnumerable<(MachineItem Item, string Detail)> items) =>
        items.SelectMany(one => Written(one.Item.Name).Select(name => ChoiceList.Name(name, one.Detail))).DistinctBy(item => item.Label);

    private IEnumerable<string> Written(string name)
    {
        var bracket = name.IndexOf('[', StringComparison.Ordinal);
        if (bracket > 0)
        {
            var index = name[(bracket + 1)..^1].Split(", ").Select(value => values.VariableFor(value) ?? value).ToList();
            yield return $"{name[..bracket]}[{string.Join(", ", index)}]";
        }

        yield return name;
    }
}
