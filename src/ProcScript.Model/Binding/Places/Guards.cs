namespace ProcScript.Model.Binding.Places;

/// <summary>
/// The options that must be on, and those that must be off, for a place to count: the <c>when</c> around it. A bit an option.
/// </summary>
internal readonly record struct Guards(ulong On, ulong Off)
{
    /// <summary>The place counts in every variant.</summary>
    public static Guards None => default;

    /// <summary>Every option that is asked for.</summary>
    public ulong Options => On | Off;

    /// <summary>Both these and another.</summary>
    public Guards With(int option, bool on) => on ? this with { On = On | (1UL << option) } : this with { Off = Off | (1UL << option) };

    /// <summary>Whether the place counts in the variant with these options on.</summary>
    public bool Hold(ulong variant) => (variant & On) == On && (variant & Off) == 0;
}
