using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Syntax.Findings;

namespace ProcScript.Model.Binding.Findings;

/// <summary>
/// What one piece of binding had to say. Each piece runs on one thread with a sink of its own, so that the order never depends on threads.
/// </summary>
internal sealed class FindingSink
{
    /// <summary>
    /// A text with more unknown names than this has another trouble than a slip of the finger, and looking for near ones takes long.
    /// </summary>
    private const int MostSuggestions = 100;

    private readonly List<RawFinding> _findings = [];
    private readonly HashSet<Sighting> _sightings = [];
    private int _suggestions;

    /// <summary>What was reported, in order.</summary>
    public IReadOnlyList<RawFinding> Findings => _findings;

    /// <summary>Whether an error was reported, or something stayed quiet because it follows from an error reported elsewhere.</summary>
    public bool HasErrors { get; private set; }

    /// <summary>What was looked up among the declarations of the library, where that is kept.</summary>
    public IReadOnlyCollection<Sighting> Sightings => _sightings;

    /// <summary>Whether some of it was not there.</summary>
    public bool HasMissed { get; private set; }

    /// <summary>Notes what a name was found to mean.</summary>
    public void Saw(string name, SourceFile from, Symbol? found)
    {
        _sightings.Add(new Sighting(from, name, found, found?.IsFaulty ?? false, found?.Bound));
        HasMissed |= found is null;
        if (found is { IsSeen: false })
        {
            found.IsSeen = true;
        }
    }

    /// <summary>One that has said and seen the same, and goes on by itself.</summary>
    public FindingSink Copy()
    {
        var copy = new FindingSink { HasErrors = HasErrors, LosesNames = LosesNames, HasMissed = HasMissed, _suggestions = _suggestions };
        copy._findings.AddRange(_findings);
        copy._sightings.UnionWith(_sightings);
        return copy;
    }

    /// <summary>Reports a finding at a place under some <c>when</c>.</summary>
    /// <param name="finding">What is to be said.</param>
    /// <param name="guards">The <c>when</c> around the place.</param>
    /// <param name="namesOptions">Whether the message says already with which options.</param>
    public void Report(Finding finding, Guards guards = default, bool namesOptions = false)
    {
        _findings.Add(new RawFinding(finding, guards, namesOptions));
        HasErrors |= finding.Rule.DefaultSeverity == Severity.Error;
    }

    /// <summary>Reports a finding at a place.</summary>
    public void Report(Finding finding, BindingPlace place) => Report(finding, place.Guards);

    /// <summary>Whether it is still worth looking for what an unknown name may have meant. Counts how often it was asked.</summary>
    public bool MaySuggest() => _suggestions++ < MostSuggestions;

    /// <summary>
    /// Whether declarations may be missing here for a reason that is reported, so that a name that does not resolve follows from it.
    /// </summary>
    public bool LosesNames { get; private set; }

    /// <summary>Notes that something stayed quiet because it follows from an error reported elsewhere.</summary>
    public void Poison() => HasErrors = true;

    /// <summary>Notes that declarations may be missing here for a reason that is reported.</summary>
    public void LoseNames() => HasErrors = LosesNames = true;
}

/// <summary>A finding before repeats are taken out.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="Guards">The <c>when</c> around its place.</param>
/// <param name="NamesOptions">Whether its message says already with which options.</param>
internal readonly record struct RawFinding(Finding Finding, Guards Guards, bool NamesOptions);
