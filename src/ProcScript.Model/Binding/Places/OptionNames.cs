using System.Collections.Frozen;
using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Machines;

namespace ProcScript.Model.Binding.Places;

/// <summary>The options of a machine by name.</summary>
internal sealed class OptionNames
{
    /// <summary>As many options as a set of bits holds. A machine with more is reported long before.</summary>
    public const int Most = 64;

    private readonly FrozenDictionary<string, int> _indices;

    /// <summary>The names of these options.</summary>
    /// <param name="options">The options.</param>
    /// <param name="isComplete">Whether none can be missing for a reason that is reported already.</param>
    public OptionNames(ImmutableArray<Option> options, bool isComplete)
    {
        IsComplete = isComplete;
        _indices = options.Select((option, index) => KeyValuePair.Create(option.Name, index)).ToFrozenDictionary(StringComparer.Ordinal);
    }

    /// <summary>Whether none can be missing for a reason that is reported already.</summary>
    public bool IsComplete { get; }

    /// <summary>The number of the option of that name; -1 where there is none.</summary>
    public int IndexOf(string name) => _indices.TryGetValue(name, out var index) ? index : -1;

    /// <summary>The names near to the one wanted.</summary>
    public ImmutableArray<string> Near(string wanted, FindingSink sink) => new NearNames(_indices.Keys).Find(wanted, sink);
}
