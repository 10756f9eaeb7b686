using System.Collections.Immutable;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Machines;

/// <summary>Where an energy is proved to be off, where that is said: whoever does it has to get there.</summary>
public sealed record VerifyPlace
{
    /// <summary>The joint, part or control at which it is done; null where words say it.</summary>
    public MachineItem? Item { get; init; }

    /// <summary>Where, in words; the title of the item where one is named.</summary>
    public string Words { get; init; } = "";

    /// <summary>What it takes to get there, beside what the item itself takes.</summary>
    public ImmutableArray<Condition> Conditions { get; init; } = [];

    /// <summary>What it is done with.</summary>
    public ImmutableArray<Tool> Tools { get; init; } = [];

    /// <summary>Where it is written.</summary>
    public required SourceSpan Declared { get; init; }
}
