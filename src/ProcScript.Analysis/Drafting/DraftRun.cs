using System.Collections.Immutable;
using ProcScript.Analysis.Mending;
using ProcScript.Model;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting;

/// <summary>One drafting of a library.</summary>
/// <param name="library">The library.</param>
/// <param name="request">What is to be drafted.</param>
internal sealed class DraftRun(Library library, DraftRequest request)
{
    private readonly Dictionary<string, DraftedText> _texts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, HashSet<string>> _reach = new(StringComparer.Ordinal);
    private readonly List<DraftTrouble> _troubles = [];
    private int _declared;

    /// <summary>Drafts machine by machine.</summary>
    public DraftReport Run()
    {
        _troubles.AddRange(library.Trees.Values
            .Where(tree => !tree.Findings.IsEmpty && request.MayChange(tree.Text.Path))
            .Select(tree => new DraftTrouble(tree.Findings[0].Primary, "its text has errors: fix these first")));
        var procedures =
            from tree in library.Trees.Values
            where tree.Findings.IsEmpty
            from procedure in tree.Root.Declarations.OfType<ProcedureSyntax>()
            where !procedure.Machine.IsMissing
            let machine = Machine(tree, procedure.Machine.Text)
            group (tree, procedure) by (machine.Tree?.Text.Path ?? "", procedure.Machine.Text, machine.Machine) into machine
            select (machine.Key, Procedures: machine.ToList());
        foreach (var (key, on) in procedures.ToList())
        {
            Draft(key.Text, key.Machine, key.Item1, on);
        }

        var files = _texts.Values.Select(text => text.Finish()).OfType<MendedFile>().OrderBy(file => file.Path, StringComparer.Ordinal).ToImmutableArray();
        var after = files.ToDictionary(file => file.Path, file => file.After, StringComparer.Ordinal);
        return new DraftReport
        {
            Files = files,
            Declared = _declared,
            Questions = library.Trees.Values.Where(tree => request.MayChange(tree.Text.Path)).Sum(tree => DraftQuestions
                .In(after.TryGetValue(tree.Text.Path, out var text) ? SyntaxTree.Parse(new SourceText(tree.Text.Path, text)) : tree).Count()),
            Troubles = [.. _troubles],
        };
    }

    private void Draft(string name, MachineSyntax? machine, string path, List<(SyntaxTree Tree, ProcedureSyntax Procedure)> procedures)
    {
        var given = procedures.Where(one => request.MayChange(one.Tree.Text.Path)).ToList();
        if (given.Count == 0)
        {
            return;
        }

        // A machine of that name that is only out of sight is not drafted a second time: its file has to be used.
        if (machine is null && library.Trees.Values.Any(tree => tree.Root.Declarations.Any(one => one.Name.Text == name)))
        {
            return;
        }

        var mentions = procedures.ConvertAll(one => MentionWalk.Of(one.Tree, one.Procedure, called => Find<ProcedureSyntax>(one.Tree, called)));
        var home = machine is null ? given[0].Tree : library.Trees[path];
        var declared = new DeclaredItems(home, machine);
        var drafted = DraftedMachine.Of(mentions, declared, request.Facts, request.Guesses);
        var kinds = new DraftedKinds(InSight(home), one => Elsewhere(home, one), request.Facts);
        foreach (var joint in drafted.Items.Where(item => item.IsJoint))
        {
            kinds.Provide(joint);
        }

        foreach (var (keyword, entry) in mentions.Where(one => request.MayChange(one.Tree.Text.Path) && Reach(one.Tree.Text.Path).Contains(home.Text.Path)).SelectMany(one => one.Catalog).Distinct())
        {
            kinds.Provide(keyword, entry);
        }

        if (kinds.Troubles.Count > 0)
        {
            _troubles.AddRange(kinds.Troubles.Select(trouble => new DraftTrouble(new SourceSpan(given[0].Tree.Text.Path, given[0].Procedure.Name.Span), trouble)));
            return;
        }

        if (!drafted.IsEmpty || kinds.Entries.Any() || kinds.Uses.Count > 0 || machine is null)
        {
            if (!request.MayChange(home.Text.Path) || !home.Findings.IsEmpty)
            {
                _troubles.Add(new DraftTrouble(
                    new SourceSpan(given[0].Tree.Text.Path, given[0].Procedure.Machine.Span),
                    home.Findings.IsEmpty
                        ? $"the machine `{name}` lacks what the steps name, and its file `{home.Text.Path}` was not given: name it too"
                        : $"the machine `{name}` lacks what the steps name, and its file `{home.Text.Path}` has errors in its text: fix these first"));
                return;
            }

            Write(name, drafted, kinds, TextOf(home), given[0].Procedure);
            _declared += drafted.Items.Count() + kinds.Entries.Count() + (machine is null ? 1 : 0);
        }

        foreach (var (tree, procedure) in given)
        {
            TextOf(tree).Shorten(procedure, declared);
        }
    }

    private void Write(string name, DraftedMachine drafted, DraftedKinds kinds, DraftedText text, ProcedureSyntax first)
    {
        var entries = string.Join('\n', kinds.Entries);
        text.Use(kinds.Uses);
        if (drafted.Declared.Machine is not { } machine)
        {
            var title = request.Facts.MachineTitle ?? DraftWords.Capital(DraftWords.Words(name));
            text.Before(first, $"{entries}\n\nmachine {name} {DraftWords.Quoted(title)} {{{DraftWriter.Machine(drafted)}}}\n\n");
            return;
        }

        text.Catalog(machine, entries);
        text.Into(machine, DraftWriter.Machine(drafted));
        foreach (var part in drafted.Items.Where(item => item.IsJoint).Select(joint => drafted.Declared.Part(joint.Owner)).OfType<PartSyntax>().Distinct())
        {
            text.Into(part, DraftWriter.Joints(drafted, part));
        }
    }

    private DraftedText TextOf(SyntaxTree tree)
    {
        if (!_texts.TryGetValue(tree.Text.Path, out var text))
        {
            _texts[tree.Text.Path] = text = new DraftedText(tree);
        }

        return text;
    }

    private (SyntaxTree? Tree, MachineSyntax? Machine) Machine(SyntaxTree from, string name) => Reach(from.Text.Path)
        .Select(path => library.Trees[path])
        .Select(tree => (tree, tree.Root.Declarations.OfType<MachineSyntax>().FirstOrDefault(machine => machine.Name.Text == name)))
        .FirstOrDefault(found => found.Item2 is not null);

    private TDeclaration? Find<TDeclaration>(SyntaxTree from, string name)
        where TDeclaration : DeclarationSyntax =>
        Reach(from.Text.Path).SelectMany(path => library.Trees[path].Root.Declarations).OfType<TDeclaration>().FirstOrDefault(one => one.Name.Text == name);

    private Dictionary<string, DeclarationSyntax> InSight(SyntaxTree from)
    {
        var names = new Dictionary<string, DeclarationSyntax>(StringComparer.Ordinal);
        foreach (var declaration in Reach(from.Text.Path).SelectMany(path => library.Trees[path].Root.Declarations))
        {
            names.TryAdd(declaration.Name.Text, declaration);
        }

        return names;
    }

    /// <summary>Files out of sight that declare a catalog entry, and that do not see this one themselves: files may not use each other in a round.</summary>
    private List<string> Elsewhere(SyntaxTree from, string name) =>
    [
        .. library.Trees.Values
            .Where(tree => tree.Root.Declarations.Any(one => one is CatalogSyntax && one.Name.Text == name) && !Reach(tree.Text.Path).Contains(from.Text.Path))
            .Select(tree => tree.Text.Path),
    ];

    /// <summary>The files that a file sees, itself among them.</summary>
    private HashSet<string> Reach(string path)
    {
        if (!_reach.TryGetValue(path, out var reach))
        {
            _reach[path] = reach = FileUses.Reach([path], one => FileUses.Of(one, library.Trees[one]).Where(library.Trees.ContainsKey));
        }

        return reach;
    }
}
