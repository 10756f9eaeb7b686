using CsCheck;
using ProcScript.Jobs.Journals;

namespace ProcScript.Jobs.Tests;

/// <summary>Journals as text: what was written comes back, and what was changed shows.</summary>
public sealed class JournalTextTests
{
    private static readonly Gen<JobEvent> Event = Gen.Select(
        Gen.Enum<EventKind>(), Gen.String, Gen.String[1, 40], Gen.Int[0, 9_999], Gen.Int[-1, 3],
        (kind, text, by, step, count) => new JobEvent
        {
            Id = Guid.NewGuid().ToString("N"),
            Kind = kind,
            At = DemoJobs.Day.AddSeconds(step),
            By = Readable(by),
            Step = step,
            Count = count < 0 ? null : count,
            Text = Readable(text),
        });

    private static readonly Gen<JobEvent[]> Events = Event.Array[1, 12];

    [Fact]
    public void What_is_written_comes_back()
    {
        Events.Sample(
            events =>
            {
                var reading = JournalText.Read(Bytes(events));

                Assert.Null(reading.Fault);
                Assert.Equal(0, reading.Torn);
                Assert.Equal(events.Select((happened, i) => happened with { Number = i + 1 }), reading.Lines.Select(line => line.Event with { Previous = "" }));
            },
            iter: Depth.Of(1_000));
    }

    [Fact]
    public void A_changed_byte_shows_in_its_line()
    {
        Gen.Select(Events, Gen.Int[0, int.MaxValue], Gen.Byte[1, 255]).Sample(
            (events, place, by) =>
            {
                var bytes = Bytes(events);
                var at = place % (bytes.Length - 1);
                var line = bytes.AsSpan(0, at).Count((byte)'\n');
                bytes[at] ^= by;

                var reading = JournalText.Read(bytes);

                // A line break that is gone joins two lines; either way the lines before hold, and no more than those.
                Assert.NotNull(reading.Fault);
                Assert.Equal(line, reading.Lines.Length);
            },
            iter: Depth.Of(4_000));
    }

    [Fact]
    public void A_line_taken_out_put_twice_or_moved_shows()
    {
        Gen.Select(Event.Array[3, 9], Gen.Int[0, int.MaxValue], Gen.Int[0, 2]).Sample(
            (events, place, how) =>
            {
                var lines = Lines(events);
                // The last may be missing: nothing in a file can tell that. What is printed with the record can.
                var at = place % (lines.Count - 1);
                switch (how)
                {
                    case 0:
                        lines.RemoveAt(at);
                        break;
                    case 1:
                        lines.Insert(at, lines[at]);
                        break;
                    default:
                        (lines[at], lines[at + 1]) = (lines[at + 1], lines[at]);
                        break;
                }

                Assert.NotNull(JournalText.Read([.. lines.SelectMany(line => line)]).Fault);
            },
            iter: Depth.Of(2_000));
    }

    [Fact]
    public void Cut_off_at_any_byte_all_lines_before_are_read()
    {
        var lines = Lines([.. Enumerable.Range(0, 6).Select(i => Plain(i))]);
        byte[] bytes = [.. lines.SelectMany(line => line)];
        for (var length = 0; length <= bytes.Length; length++)
        {
            var whole = bytes.AsSpan(0, length).Count((byte)'\n');
            var reading = JournalText.Read(bytes.AsSpan(0, length));

            Assert.Null(reading.Fault);
            Assert.Equal(whole, reading.Lines.Length);
            Assert.Equal(lines.Take(whole).Sum(line => line.Length), reading.Length);
            Assert.Equal(length - reading.Length, reading.Torn);
        }
    }

    [Fact]
    public void A_member_that_nobody_knows_is_told_and_not_dropped()
    {
        var line = System.Text.Encoding.UTF8.GetString(Lines([Plain(1)])[0]);
        var body = line[..line.IndexOf(",\"hash\"", StringComparison.Ordinal)].Replace("\"by\"", "\"colour\":\"red\",\"by\"", StringComparison.Ordinal);
        var hash = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(body)));

        var fault = JournalText.Read(System.Text.Encoding.UTF8.GetBytes($"{body},\"hash\":\"{hash}\"}}\n")).Fault;

        Assert.Contains("colour", fault!.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_that_is_too_long_is_refused()
    {
        Assert.Throws<ArgumentException>(() => JournalText.Write(Plain(1) with { Text = new string('x', JournalText.LongestLine) }, null));
    }

    private static JobEvent Plain(int i) => new() { Id = $"e{i}", Kind = EventKind.Done, At = DemoJobs.Day, By = "Kern", Step = i };

    // A letter that stands alone of a pair is no text, and no file can hold it.
    private static string Readable(string text) => string.Concat(text.Where(letter => !char.IsSurrogate(letter)));

    private static List<byte[]> Lines(IReadOnlyList<JobEvent> events)
    {
        var lines = new List<byte[]>();
        JournalLine? last = null;
        foreach (var happened in events)
        {
            last = JournalText.Write(happened, last);
            lines.Add(last.Bytes.ToArray());
        }

        return lines;
    }

    private static byte[] Bytes(IReadOnlyList<JobEvent> events) => [.. Lines(events).SelectMany(line => line)];
}
