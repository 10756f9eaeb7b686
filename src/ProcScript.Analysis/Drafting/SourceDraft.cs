using ProcScript.Analysis.Drafting.Notes;
using ProcScript.Analysis.Drafting.Parts;
using ProcScript.Model.Sources;
using ProcScript.Syntax;
using ProcScript.Syntax.Formatting;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Drafting;

/// <summary>Makes a source of a plain list: of notes a machine and a procedure, of a list of parts a machine.</summary>
public static class SourceDraft
{
    /// <summary>The most characters of a list: what is longer is no list of steps.</summary>
    public const int MostCharacters = 1_000_000;

    /// <summary>Whether a machine may have this name.</summary>
    public static bool IsName(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return NameText.IsName(name);
    }

    /// <summary>What a file is called as a name, as far as it can be one.</summary>
    public static string NameOf(string file) => DraftWords.Name(file) is var name && IsName(name) ? name : $"{name}_machine".TrimStart('_');

    /// <summary>Makes a machine and a procedure of notes, one step a line.</summary>
    /// <param name="notes">The notes.</param>
    /// <param name="machine">The name of the machine.</param>
    /// <param name="source">What the notes are called.</param>
    /// <returns>The text of the source; null where the notes say nothing.</returns>
    public static DraftedSource? OfNotes(string notes, string machine, string source)
    {
        ArgumentNullException.ThrowIfNull(notes);
        var lines = NoteLine.Read(notes);
        if (lines.IsEmpty)
        {
            return null;
        }

        var reader = new NotesReader();
        reader.Read(lines);
        var facts = new DraftFacts
        {
            MachineTitle = reader.Machine.Length > 0 ? reader.Machine : null,
            Items = reader.Names.Facts(),
            Catalog = reader.Catalog,
        };
        return Draft(new NotesText(reader, machine, source).Write(), machine, facts, reader.Steps.Count);
    }

    /// <summary>Makes a machine of a list of parts.</summary>
    /// <param name="table">The list.</param>
    /// <param name="machine">The name of the machine.</param>
    /// <param name="source">What the list is called.</param>
    /// <exception cref="PartsListException">The list cannot be read.</exception>
    public static DraftedSource OfParts(PartsTable table, string machine, string source)
    {
        ArgumentNullException.ThrowIfNull(table);
        var reader = new PartsReader(table.Headings);
        reader.Read(table.Rows.IsEmpty ? throw new PartsListException("has headings and no rows.") : table.Rows);
        var kinds = new DraftedKinds(new Dictionary<string, DeclarationSyntax>(), _ => [], new DraftFacts { Catalog = reader.Catalog });
        foreach (var joint in reader.Items.Where(item => item.IsJoint))
        {
            kinds.Provide(joint);
        }

        foreach (var tool in reader.Tools)
        {
            kinds.Provide("tool", tool);
        }

        var entries = string.Concat(kinds.Entries.Select(entry => entry + "\n"));
        var text = $"{entries}\n// Made from {source}: read it against the machine.\n"
            + $"machine {machine} {DraftWords.Quoted(table.Title.Length > 0 ? table.Title : DraftWords.Capital(DraftWords.Words(machine)))} {{{DraftWriter.Machine(DraftedMachine.Of(reader.Items))}}}\n";
        var tree = SyntaxTree.Parse(new SourceText(machine + ".proc", text));
        text = Formatter.Format(tree) ?? text;
        return new DraftedSource(text, table.Rows.Length, DraftQuestions.In(tree).Count());
    }

    private static DraftedSource Draft(string text, string machine, DraftFacts facts, int steps)
    {
        var path = machine + ".proc";
        var report = LibraryDraft.Run(MemorySourceStore.Of(path, text), CheckSettings.Usual, new DraftRequest { Facts = facts });
        var after = report.Files is [var file] ? file.After : text;
        return new DraftedSource(after, steps, DraftQuestions.In(SyntaxTree.Parse(new SourceText(path, after))).Count());
    }
}

/// <summary>A source that was made of a list.</summary>
/// <param name="Text">Its text.</param>
/// <param name="Entries">How many steps or parts it has.</param>
/// <param name="Questions">How many questions it leaves open.</param>
public sealed record DraftedSource(string Text, int Entries, int Questions);
