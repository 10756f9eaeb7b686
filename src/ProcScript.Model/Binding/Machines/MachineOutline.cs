using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Machines;
using ProcScript.Model.Names;

namespace ProcScript.Model.Binding.Machines;

/// <summary>
/// What a machine's text declares, before a variant is chosen: every <c>each</c> unrolled, every <c>when option</c> noted.
/// </summary>
internal sealed class MachineOutline
{
    private readonly Dictionary<string, List<OutlineItem>> _byName = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<string>> _byBase = new(StringComparer.Ordinal);
    private readonly Lazy<NearNames> _near;

    /// <summary>An outline of a machine.</summary>
    public MachineOutline(
        MachineSymbol symbol, string title, ImmutableArray<Option> options, List<OutlineItem> items, ulong effective, FindingSink sink)
    {
        Symbol = symbol;
        WasFaulty = symbol.IsFaulty;
        Title = title;
        Options = options;
        OptionNames = new OptionNames(options, !symbol.IsFaulty);
        Items = items;
        EffectiveOptions = effective;
        Sink = sink;
        foreach (var item in items)
        {
            if (item.Name.Length == 0)
            {
                continue;
            }

            if (!_byName.TryGetValue(item.Name, out var same))
            {
                _byName.Add(item.Name, same = []);
                var bare = CanonicalName.Base(item.Name);
                if (!_byBase.TryGetValue(bare, out var family))
                {
                    _byBase.Add(bare, family = []);
                }

                family.Add(item.Name);
            }

            same.Add(item);
        }

        _near = new Lazy<NearNames>(() => new NearNames(_byName.Keys));
    }

    /// <summary>The declaration.</summary>
    public MachineSymbol Symbol { get; }

    /// <summary>Whether the declaration carried an error when the outline was made.</summary>
    public bool WasFaulty { get; }

    /// <summary>What people call the machine.</summary>
    public string Title { get; }

    /// <summary>The options that it declares; a bit of <see cref="Guards"/> each.</summary>
    public ImmutableArray<Option> Options { get; }

    /// <summary>The same by name.</summary>
    public OptionNames OptionNames { get; }

    /// <summary>Every item, parents before children and joints before their covers.</summary>
    public IReadOnlyList<OutlineItem> Items { get; }

    /// <summary>The options that some <c>when</c> asks for.</summary>
    public ulong EffectiveOptions { get; }

    /// <summary>What is to be said of every variant.</summary>
    public FindingSink Sink { get; }

    /// <summary>Whether the machine's text carries an error whatever the variant.</summary>
    public bool HasErrors => Symbol.IsFaulty || Sink.HasErrors;

    /// <summary>Whether items may be missing for a reason that is reported already.</summary>
    public bool LosesNames => Symbol.IsFaulty || Sink.LosesNames;

    /// <summary>The declarations of a name, in whatever variant.</summary>
    public IReadOnlyList<OutlineItem> Find(string name) => _byName.TryGetValue(name, out var same) ? same : [];

    /// <summary>All names with index that share a name without it.</summary>
    public IReadOnlyList<string> Family(string bare) => _byBase.TryGetValue(bare, out var family) ? family : [];

    /// <summary>The names that are near to the one wanted.</summary>
    public ImmutableArray<string> Near(string wanted, FindingSink sink, Func<string, bool> isChoice) =>
        _near.Value.Find(wanted, sink, isChoice);
}
