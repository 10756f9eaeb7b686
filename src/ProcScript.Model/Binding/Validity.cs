using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;

namespace ProcScript.Model.Binding;

/// <summary>
/// Tells what of the last binding still holds. A piece of it whose file sees no changed file holds as it is; any other holds where all
/// that it looked up still means the same.
/// </summary>
internal sealed class Validity
{
    private readonly SymbolTable _table;
    private readonly FileReach _reach;
    private readonly bool _isNameSetSame;

    // The files that see a changed one: a bit a file.
    private readonly ulong[] _affected;

    /// <summary>Compares the files with those of the last binding.</summary>
    /// <param name="files">The files.</param>
    /// <param name="table">The declarations.</param>
    /// <param name="reach">Which file sees which.</param>
    /// <param name="isGraphSame">Whether that is as it was.</param>
    /// <param name="isNameSetSame">Whether the same names are declared in the same files.</param>
    public Validity(SourceFiles files, SymbolTable table, FileReach reach, bool isGraphSame, bool isNameSetSame)
    {
        _table = table;
        _reach = reach;
        _isNameSetSame = isNameSetSame;
        _affected = new ulong[(files.All.Length + 63) / 64];
        if (!isGraphSame)
        {
            Array.Fill(_affected, ulong.MaxValue);
            return;
        }

        foreach (var file in files.All)
        {
            if (file.IsChanged)
            {
                Affect(file);
            }
        }
    }

    /// <summary>Takes note of declarations that carry an error now and did not, or the other way: whoever sees them has to look again.</summary>
    /// <param name="isLate">Whether the catalog is bound.</param>
    public void NoteFaults(bool isLate)
    {
        foreach (var symbol in _table.All)
        {
            symbol.Faults = isLate ? symbol.Faults with { Late = symbol.IsFaulty } : new SymbolFaults(symbol.IsFaulty, false);
            if (symbol.Settled is { } settled && (isLate ? settled.Late : settled.Early) != symbol.IsFaulty)
            {
                Affect(symbol.File);
            }
        }
    }

    /// <summary>Whether what a piece of binding has seen is still so.</summary>
    /// <param name="sink">What it has seen.</param>
    /// <param name="home">The file that it is about.</param>
    public bool Holds(FindingSink sink, SourceFile home)
    {
        // What was meant by a name that is not there depends on all the names that there are.
        if (sink.HasMissed && (!_isNameSetSame || sink.Sightings.Any(seen => seen.Found is null && seen.From.IsChanged)))
        {
            return false;
        }

        if ((_affected[home.Index >> 6] >> (home.Index & 63) & 1) == 0)
        {
            return true;
        }

        foreach (var seen in sink.Sightings)
        {
            if (!seen.Holds(_table))
            {
                return false;
            }
        }

        return true;
    }

    private void Affect(SourceFile file)
    {
        var seenBy = _reach.SeenBy(file.Index);
        for (var word = 0; word < _affected.Length; word++)
        {
            _affected[word] |= seenBy[word];
        }
    }
}
