using System.Buffers;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace ProcScript.Analysis.Plans;

/// <summary>
/// The short name of what a plan says: paper with another revision is void. It is a pure function of the plan as it is published, but for the
/// revision itself, the name of its language and what no paper prints: the places of steps in the sources, and what only another program needs to replay the plan. So a comment,
/// the layout of a text or another procedure leaves it as it is, and so does a new sort of thing that plans can say and this one does not;
/// whatever a pack says in another way changes it. Templates are a shop's own look and are not in it.
/// </summary>
internal static class PlanRevision
{
    private const int Digits = 10;

    /// <summary>How many bytes are passed on at once, about.</summary>
    private const int Piece = 1 << 15;

    private static readonly PlanSource Nowhere = new("", 0, 0);

    /// <summary>The first digits of SHA-256 over <see cref="Content"/>.</summary>
    public static string Of(Plan plan)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        WriteWithoutBlanks(plan, hash.AppendData);
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..Digits];
    }

    /// <summary>All that a plan says on paper, but for its revision.</summary>
    public static string Content(Plan plan)
    {
        var content = new ArrayBufferWriter<byte>();
        WriteWithoutBlanks(plan, piece => content.Write(piece));
        return Encoding.UTF8.GetString(content.WrittenSpan);
    }

    /// <summary>
    /// Writes a plan as it is on paper, without the members that say nothing. A plan of thousands of steps goes through in one pass: neither a tree
    /// of it is made nor a second text.
    /// </summary>
    private static void WriteWithoutBlanks(Plan plan, Action<ReadOnlySpan<byte>> write)
    {
        var told = new Utf8JsonReader(JsonSerializer.SerializeToUtf8Bytes(OnPaper(plan), PlanJson.Compact.Plan));
        var piece = new ArrayBufferWriter<byte>(2 * Piece);
        using var writer = new Utf8JsonWriter(piece);
        while (told.Read())
        {
            if (told.TokenType == JsonTokenType.PropertyName)
            {
                WriteMember(ref told, writer);
            }
            else
            {
                WriteToken(ref told, writer);
            }

            if (writer.BytesPending + piece.WrittenCount > Piece)
            {
                Pass();
            }
        }

        Pass();

        void Pass()
        {
            writer.Flush();
            write(piece.WrittenSpan);
            piece.ResetWrittenCount();
        }
    }

    private static Plan OnPaper(Plan plan) => plan with
    {
        Revision = "",
        Language = "",
        TextsLanguage = "",
        Licensed = [],
        Procedure = "",
        Parameters = [],
        GoalActions = [],
        Items = [],
        Rules = [],
        Discards = [.. plan.Discards.Select(discard => new PlanDiscard(discard.Title, discard.Because))],
        Strip = [.. plan.Strip.Select(OnPaper)],
        Work = OnPaper(plan.Work),
        Refit = [.. plan.Refit.Select(OnPaper)],
    };

    private static PlanStage OnPaper(PlanStage stage) => stage with
    {
        Steps = [.. stage.Steps.Select(step => step with { Source = Nowhere, Position = "", Needs = [], Open = [], Test = 0 })],
    };

    /// <summary>Writes a member and the first token of its value, unless the value says nothing.</summary>
    private static void WriteMember(ref Utf8JsonReader told, Utf8JsonWriter writer)
    {
        var name = told.GetString()!;
        told.Read();
        if (told.TokenType == JsonTokenType.StartArray)
        {
            var first = told;
            first.Read();
            if (first.TokenType == JsonTokenType.EndArray)
            {
                told = first;
                return;
            }
        }

        if (!IsBlank(ref told))
        {
            writer.WritePropertyName(name);
            WriteToken(ref told, writer);
        }
    }

    private static bool IsBlank(ref Utf8JsonReader value) => value.TokenType switch
    {
        JsonTokenType.Null or JsonTokenType.False => true,
        JsonTokenType.String => value.ValueSpan.IsEmpty,
        JsonTokenType.Number => value.ValueSpan.SequenceEqual("0"u8),
        _ => false,
    };

    private static void WriteToken(ref Utf8JsonReader told, Utf8JsonWriter writer)
    {
        switch (told.TokenType)
        {
            case JsonTokenType.StartObject:
                writer.WriteStartObject();
                break;
            case JsonTokenType.EndObject:
                writer.WriteEndObject();
                break;
            case JsonTokenType.StartArray:
                writer.WriteStartArray();
                break;
            case JsonTokenType.EndArray:
                writer.WriteEndArray();
                break;
            case JsonTokenType.String:
                writer.WriteStringValue(told.GetString());
                break;
            default:
                writer.WriteRawValue(told.ValueSpan, skipInputValidation: true);
                break;
        }
    }
}
