namespace ProcScript.Jobs.Stores;

/// <summary>By what it shows, without reading it, that a journal is not as it was: two stamps that are equal are of one that nobody has touched.</summary>
/// <param name="Extent">How far it goes: in bytes or in lines, as the store counts.</param>
/// <param name="Changed">When it was changed last, as the store counts: a time, or the number of a transaction.</param>
public readonly record struct JournalStamp(long Extent, long Changed);
