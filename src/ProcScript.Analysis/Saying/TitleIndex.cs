using System.Collections.Concurrent;
using System.Collections.Immutable;
using ProcScript.Analysis.Prose;
using ProcScript.Model.Machines;

namespace ProcScript.Analysis.Saying;

/// <summary>
/// The items of a machine by the words that people call them: a whole title; of items with an index also the title without it, which stands
/// for all of them; of a joint its name in words, where it has two or more. English: what follows a title tells whether it ends there.
/// </summary>
internal sealed class TitleIndex
{
    /// <summary>Parts words; one of them, as <c>12 V</c>, may hold a blank.</summary>
    private const char Between = '\n';

    private readonly Dictionary<string, List<Entry>> _byFirstWord = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The letters and figures that titles begin with: a text without any of them need not be divided into words.</summary>
    private readonly HashSet<string> _beginnings = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>What each text names: the same words stand at many steps, there and back, and in many procedures.</summary>
    private readonly ConcurrentDictionary<string, ImmutableArray<NamedItems>> _named = new(StringComparer.Ordinal);

    /// <summary>Takes the titles of a machine.</summary>
    public TitleIndex(Machine machine)
    {
        var entries = new Dictionary<string, Entry>(StringComparer.OrdinalIgnoreCase);
        foreach (var item in machine.Parts.Concat<MachineItem>(machine.Energies).Concat(machine.Fluids).Concat(machine.Controls).Concat(machine.Joints))
        {
            var words = Words(item.Title);
            if (item is Joint && words.Length < 2)
            {
                continue;
            }

            Add(entries, words, item);
            if (WithoutIndex(words, item.Name) is { Length: > 0 } shared && shared.Length < words.Length)
            {
                Add(entries, shared, item);
            }
        }

        foreach (var alike in _byFirstWord.Values.Where(alike => alike.Count > 1))
        {
            alike.Sort((one, other) => other.Words.Length.CompareTo(one.Words.Length));
        }
    }

    /// <summary>What the sentences of a text name.</summary>
    public ImmutableArray<NamedItems> In(string text) =>
        _named.GetOrAdd(text, static (one, index) => index.MayName(one) ? [.. SentenceSplitter.Split(one).SelectMany(index.In)] : [], this);

    private bool MayName(ReadOnlySpan<char> text)
    {
        var beginnings = _beginnings.GetAlternateLookup<ReadOnlySpan<char>>();
        for (var at = 0; at < text.Length;)
        {
            var run = Run(text[at..]);
            if (run.Length > 0 && (beginnings.Contains(run) || (IsPlural(run) && beginnings.Contains(run[..^1]))))
            {
                return true;
            }

            at += run.Length + 1;
        }

        return beginnings.Contains("");
    }

    /// <summary>The letters and figures at the start of a text.</summary>
    private static ReadOnlySpan<char> Run(ReadOnlySpan<char> text)
    {
        var end = 0;
        while (end < text.Length && char.IsLetterOrDigit(text[end]))
        {
            end++;
        }

        return text[..end];
    }

    /// <summary>What a sentence names, of titles that begin with the same words the longest.</summary>
    private IEnumerable<NamedItems> In(Sentence sentence)
    {
        for (var at = 0; at < sentence.Words.Length; at++)
        {
            if (!_byFirstWord.TryGetValue(Singular(sentence.Words[at].Text), out var entries) && !_byFirstWord.TryGetValue(sentence.Words[at].Text, out entries))
            {
                continue;
            }

            if (entries.Find(entry => Stands(entry, sentence, at)) is { } found)
            {
                yield return new NamedItems(sentence, found.Items, at + found.Words.Length);
                at += found.Words.Length - 1;
            }
        }
    }

    private void Add(Dictionary<string, Entry> entries, string[] words, MachineItem item)
    {
        if (words.Length == 0)
        {
            return;
        }

        var title = string.Join(Between, words);
        if (entries.TryGetValue(title, out var entry))
        {
            entry.Items = entry.Items.Add(item);
            return;
        }

        entry = new Entry(words, item);
        entries.Add(title, entry);
        if (!_byFirstWord.TryGetValue(words[0], out var alike))
        {
            _byFirstWord.Add(words[0], alike = []);
            _beginnings.Add(Run(words[0]).ToString());
        }

        alike.Add(entry);
    }

    private static string[] Words(string title)
    {
        var split = WordSplitter.Split(title, 0, title.Length);
        var words = new string[split.Length];
        for (var at = 0; at < words.Length; at++)
        {
            words[at] = split[at].Text;
        }

        return words;
    }

    private static string[] WithoutIndex(string[] words, string name)
    {
        var bracket = name.IndexOf('[', StringComparison.Ordinal);
        if (bracket < 0)
        {
            return [];
        }

        var values = name[(bracket + 1)..].Split([']', ',', ' ', '_'], StringSplitOptions.RemoveEmptyEntries).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return [.. words.Where(word => !values.Contains(word))];
    }

    /// <summary>Whether the words of a title stand there, and the name goes on neither before nor behind them.</summary>
    private static bool Stands(Entry entry, Sentence sentence, int at)
    {
        var end = at + entry.Words.Length;
        if (end > sentence.Words.Length)
        {
            return false;
        }

        for (var i = 0; i < entry.Words.Length; i++)
        {
            var word = sentence.Words[at + i].Text;
            var isSame = word.Equals(entry.Words[i], StringComparison.OrdinalIgnoreCase)
                || (i == entry.Words.Length - 1 && Singular(word).Equals(entry.Words[i], StringComparison.OrdinalIgnoreCase));
            if (!isSame || (i > 0 && !sentence.Before(at + i).IsWhiteSpace()))
            {
                return false;
            }
        }

        return EnglishNouns.BeginsAt(sentence, at) && EnglishNouns.EndsAt(sentence, end);
    }

    private static string Singular(string word) => IsPlural(word) ? word[..^1] : word;

    private static bool IsPlural(ReadOnlySpan<char> word) => word.Length > 3 && word is [.., not 's', 's'];

    private sealed class Entry(string[] words, MachineItem first)
    {
        public string[] Words => words;

        public ImmutableArray<MachineItem> Items { get; set; } = [first];
    }
}

/// <summary>Words of a sentence that name items.</summary>
/// <param name="Sentence">The sentence.</param>
/// <param name="Items">The items; of several nobody can say which is meant.</param>
/// <param name="End">The word after the last.</param>
internal readonly record struct NamedItems(Sentence Sentence, ImmutableArray<MachineItem> Items, int End);
