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
    public bool IsChosen => IsChosenIn(settings);

    /// <summary>Whether settings have a naming.</summary>
    public static bool IsChosenIn(PathSettings settings) => NamingSettings.All.Any(one => settings.Get(one) != NameStyle.Any);

    /// <summary>The names that are written otherwise, in the order of files and text. What is declared in several branches is told once.</summary>
    public IEnumerable<Misnomer> Misnomers() => !IsChosen ? [] : library.Trees.Values
        .SelectMany(tree => tree.Root.Declarations.SelectMany(declaration => Declared(declaration)).Select(one => Misnamed(tree.Text.Path, one.Name, one.Owner, one.Sort, one.Setting)))
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

    private Misnomer? Misnamed(string path, WordSyntax word, string owner, string sort, ChoiceSetting<NameStyle> setting)
    {
        var wanted = word.IsMissing ? word.Text : NameWords.In(settings.Get(setting), word.Text);
        return wanted == word.Text
            ? null
            : new Misnomer(
                new NamedThing(owner.Length == 0 ? NameScope.Library : NameScope.Machine, path, owner, word.Text),
                new SourceSpan(path, word.Span),
                sort,
                wanted);
    }

    private static IEnumerable<(WordSyntax Name, string Owner, string Sort, ChoiceSetting<NameStyle> Setting)> Declared(DeclarationSyntax declaration) => declaration switch
    {
        MachineSyntax machine => machine.DescendantsAndSelf().Skip(1).Select(Item).OfType<(WordSyntax Name, string Sort, ChoiceSetting<NameStyle> Setting)>()
            .Select(item => (item.Name, machine.Name.Text, item.Sort, item.Setting)).Prepend((machine.Name, "", "a machine", NamingSettings.Machines)),
        ProcedureSyntax => [(declaration.Name, "", "a procedure", NamingSettings.Procedures)],
        CatalogSyntax => [(declaration.Name, "", "a catalog entry", NamingSettings.Catalog)],
        _ => [],
    };

    private static (WordSyntax Name, string Sort, ChoiceSetting<NameStyle> Setting)? Item(SyntaxNode node) => node switch
    {
        PartSyntax part => (part.Name.Name, "a part", NamingSettings.Parts),
        JointSyntax joint => (joint.Name.Name, "a joint", NamingSettings.Joints),
        CoverSyntax cover => (cover.Name.Name, cover.Keyword.Text == "locked" ? "a lock" : "a cover", NamingSettings.Joints),
        EnergySyntax energy => (energy.Name.Name, "an energy", NamingSettings.Services),
        FluidSyntax fluid => (fluid.Name.Name, "a fluid", NamingSettings.Services),
        ControlSyntax control => (control.Name.Name, "a control", NamingSettings.Services),
        PlaceSyntax place => (place.Name.Name, "a place", NamingSettings.Services),
        OptionSyntax option => (option.Name, "an option", NamingSettings.Services),
        _ => null,
    };
}
