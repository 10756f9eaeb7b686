using ProcScript.LanguageServer.Protocol;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;

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
        var (bare, indices) = (CanonicalName.Base(name), CanonicalName.Indices(name));
        yield return CanonicalName.Written(bare, [.. indices.Select(value => values.VariableFor(value) ?? value)]);
        yield return CanonicalName.Written(bare, indices);
    }
}
