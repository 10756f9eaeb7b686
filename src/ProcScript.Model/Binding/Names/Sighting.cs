using ProcScript.Model.Binding.Files;

namespace ProcScript.Model.Binding.Names;

/// <summary>What a name was found to mean, so that a later binding can tell whether it still means that.</summary>
/// <param name="From">The file that asked.</param>
/// <param name="Name">The name.</param>
/// <param name="Found">The declaration; null where there was none in sight.</param>
/// <param name="WasFaulty">Whether that carried an error.</param>
/// <param name="Bound">Of the catalog: what it had been bound to.</param>
internal readonly record struct Sighting(SourceFile From, string Name, Symbol? Found, bool WasFaulty, object? Bound)
{
    /// <summary>Within one piece of binding a name means one thing in a file.</summary>
    public bool Equals(Sighting other) => ReferenceEquals(From, other.From) && Name == other.Name;

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(From, Name);

    /// <summary>Whether the name means the same now.</summary>
    public bool Holds(SymbolTable table) => table.Find(Name, From) is not { } now
        ? Found is null
        // Another text of the catalog that comes to the same entry changes nothing for who reads the entry.
        : (ReferenceEquals(now, Found) || Bound is not null) && now.IsFaulty == WasFaulty && ReferenceEquals(now.Bound, Bound);
}
