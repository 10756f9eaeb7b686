// What tree-sitter's own lexer cannot see: that a name is missing, that a text has no parts, and that a text ends with its line.
#include "tree_sitter/parser.h"

#include <string.h>

#include "sentence_words.h"

// As grammar.js lists them under 'externals'.
enum { MISSING_NAME, PLAIN_TEXT, LINE_END };

enum { LONGEST_WORD = 16 };

void *tree_sitter_procscript_external_scanner_create(void) { return NULL; }

void tree_sitter_procscript_external_scanner_destroy(void *scanner) { (void)scanner; }

unsigned tree_sitter_procscript_external_scanner_serialize(void *scanner, char *buffer) {
    (void)scanner;
    (void)buffer;
    return 0;
}

void tree_sitter_procscript_external_scanner_deserialize(void *scanner, const char *buffer, unsigned length) {
    (void)scanner;
    (void)buffer;
    (void)length;
}

static bool is_line_end(int32_t character) { return character == '\r' || character == '\n'; }

static bool is_blank(int32_t character) {
    return is_line_end(character) || character == ' ' || character == '\t' || character == '\f' || character == 0xA0 || character == 0xFEFF;
}

static bool is_typographic_quote(int32_t character) { return character >= 0x201C && character <= 0x201F; }

static bool is_small_letter(int32_t character) { return character >= 'a' && character <= 'z'; }

// A character beyond ASCII is taken for a letter: no sentence word has one.
static bool goes_on(int32_t character) {
    return is_small_letter(character) || (character >= 'A' && character <= 'Z') || (character >= '0' && character <= '9') ||
           character == '_' || character > 0x7F;
}

// Whether the next word begins a sentence.
static bool sentence_begins(TSLexer *lexer) {
    char word[LONGEST_WORD];
    size_t length = 0;
    while (is_small_letter(lexer->lookahead)) {
        if (length == sizeof word - 1) {
            return false;
        }

        word[length++] = (char)lexer->lookahead;
        lexer->advance(lexer, false);
    }

    if (goes_on(lexer->lookahead)) {
        return false;
    }

    word[length] = '\0';
    for (size_t i = 0; i < sizeof sentence_words / sizeof *sentence_words; i++) {
        if (strcmp(word, sentence_words[i]) == 0) {
            return true;
        }
    }

    return false;
}

// Takes a text up to its closing quote or the end of its line. One with parts is left to the grammar, unless it is to be whole.
static bool take_text(TSLexer *lexer, bool is_whole) {
    bool is_plain = lexer->lookahead == '"';
    lexer->advance(lexer, false);
    while (!lexer->eof(lexer) && !is_line_end(lexer->lookahead)) {
        int32_t character = lexer->lookahead;
        if (!is_whole && (character == '\\' || character == '{')) {
            return false;
        }

        lexer->advance(lexer, false);
        if (character == '"' || (!is_plain && is_typographic_quote(character))) {
            break;
        }

        if (character == '\\' && !is_line_end(lexer->lookahead) && !lexer->eof(lexer)) {
            lexer->advance(lexer, false);
        }
    }

    lexer->mark_end(lexer);
    return true;
}

bool tree_sitter_procscript_external_scanner_scan(void *scanner, TSLexer *lexer, const bool *valid) {
    (void)scanner;

    // A missing name and the end of a line take nothing, so they would not bring the parser on while it looks for a way out of an
    // error; it asks for both at once then. Texts stay whole there, or what they say would be taken for sentences.
    bool is_lost = valid[MISSING_NAME] && valid[LINE_END];
    lexer->mark_end(lexer);
    if (valid[LINE_END] && !is_lost) {
        lexer->result_symbol = LINE_END;
        return lexer->eof(lexer) || is_line_end(lexer->lookahead);
    }

    while (is_blank(lexer->lookahead)) {
        lexer->advance(lexer, true);
    }

    if (valid[PLAIN_TEXT] && (lexer->lookahead == '"' || is_typographic_quote(lexer->lookahead))) {
        lexer->result_symbol = PLAIN_TEXT;
        return take_text(lexer, is_lost);
    }

    lexer->result_symbol = MISSING_NAME;
    return valid[MISSING_NAME] && !is_lost && sentence_begins(lexer);
}
