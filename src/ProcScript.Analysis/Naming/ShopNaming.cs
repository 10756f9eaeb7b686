using System.Collections.Immutable;
using ProcScript.Analysis.Settings;
using ProcScript.Model;
using ProcScript.Model.Names;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Naming;

/// <summary>Holds the names of a library to the naming of the shop, and writes them anew wherever they stand.</summary>
/// <param name="library">The library.</param>
/// <param name="settings">What the shop has chosen.</param>
internal sealed class ShopNaming(Library library, PathSettings settings)
{
    private readonly Lazy<LibraryNames> _names = new(() => new LibraryNames(library.Trees, new KnownNames()));

    /// <summary>Whether the shop has a naming at all.</summary>
    public bool IsChosen => NamingSettings.All.Any(one => settings.Get(one) != NameStyle.Any);

    /// <summary>The names that are written otherwise, in the order of files and text. What is declared in several branches is told once.</summary>
    public IEnumerable<Misnomer> Misnomers() => !IsChosen ? [] : library.Trees.Values
        .SelectMany(tree => tree.Root.Declarations.SelectMany(declaration => Declared(declaration)).Select(one => Misnamed(tree.Text.Path, one.Name, one.Owner, one.Setting)))
        .OfType<Misnomer>()
        .DistinctBy(misnomer => misnomer.Thing);

    /// <summary>
    /// The edits that write a name as the shop does, in every file; null where the new name is none, is taken, or would not find its uses: of what
    /// the settings call by name the old name stays.
    /// </summary>
    public ImmutableArray<TextEdit>? Rename(Misnomer misnomer)
    {
        var (thing, name) = (misnomer.Thing, misnomer.Wanted);
        if (!NameText.IsName(name) || settings.Get(SettingsTable.HouseTools).Contains(thing.Name, StringComparer.OrdinalIgnoreCase) || _names.Value.Clash(thing, name) is not null
            || IsTakenElsewhere(thing, name))
        {
            return null;
        }

        return [.. _names.Value.Uses(thing).Select(found => new TextEdit(new SourceSpan(found.Path, found.Use.Span), name))];
    }

    /// <summary>Whether a file that uses the thing says the new name of another, or has a variable of that name.</summary>
    private bool IsTakenElsewhere(NamedThing thing, string name) => _names.Value.Uses(thing).Select(found => found.Path).Distinct(StringComparer.Ordinal)
        .Any(path => _names.Value.In(path)!.Named(name).Any(use => use.Scope == NameScope.Block || (use.Scope == thing.Scope && (thing.Scope == NameScope.Library || use.Owner == thing.Owner))));

    private Misnomer? Misnamed(string path, WordSyntax word, string owner, ChoiceSetting<NameStyle> setting)
    {
        var wanted = word.IsMissing ? word.Text : NameWords.In(settings.Get(setting), word.Text);
        return wanted == word.Text
            ? null
            : new Misnomer(
                new NamedThing(owner.Length == 0 ? NameScope.Library : NameScope.Machine, path, owner, word.Text),
                new SourceSpan(path, word.Span),
                setting.Key["names.".Length..],
                wanted);
    }

    private static IEnumerable<(WordSyntax Name, string Owner, ChoiceSetting<NameStyle> Setting)> Declared(DeclarationSyntax declaration) => declaration switch
    {
        MachineSyntax machine => machine.DescendantsAndSelf().Skip(1).Select(Item).OfType<(WordSyntax Name, ChoiceSetting<NameStyle> Setting)>()
            .Select(item => (item.Name, machine.Name.Text, item.Setting)).Prepend((machine.Name, "", NamingSettings.Machines)),
        ProcedureSyntax => [(declaration.Name, "", NamingSettings.Procedures)],
        CatalogSyntax => [(declaration.Name, "", NamingSettings.Catalog)],
        _ => [],
    };

    private static (WordSyntax Name, ChoiceSetting<NameStyle> Setting)? Item(SyntaxNode node) => node switch
    {
        PartSyntax part => (part.Name.Name, NamingSettings.Parts),
        JointSyntax joint => (joint.Name.Name, NamingSettings.Joints),
        CoverSyntax cover => (cover.Name.Name, NamingSettings.Joints),
        EnergySyntax energy => (energy.Name.Name, NamingSettings.Services),
        FluidSyntax fluid => (fluid.Name.Name, NamingSettings.Services),
        ControlSyntax control => (control.Name.Name, NamingSettings.Services),
        OptionSyntax option => (option.Name, NamingSettings.Services),
        _ => null,
    };
}
