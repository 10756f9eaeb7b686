// What tree-sitter's own lexer cannot see: that a name is missing, and that a text ends with its line.
#include "tree_sitter/parser.h"

#include <string.h>

#include "sentence_words.h"

// As grammar.js lists them under 'externals'.
enum { MISSING_NAME, LINE_END };

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

static bool is_small_letter(int32_t character) { return character >= 'a' && character <= 'z'; }

// A character beyond ASCII is taken for a letter: no sentence word has one.
static bool goes_on(int32_t character) {
    return is_small_letter(character) || (character >= 'A' && character <= 'Z') || (character >= '0' && character <= '9') ||
           character == '_' || character > 0x7F;
}

// Whether the next word begins a sentence. Nothing is taken: the token is empty and stands where the last one ended.
static bool sentence_begins(TSLexer *lexer) {
    while (is_blank(lexer->lookahead)) {
        lexer->advance(lexer, true);
    }

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

bool tree_sitter_procscript_external_scanner_scan(void *scanner, TSLexer *lexer, const bool *valid) {
    (void)scanner;

    // Both at once are asked for only while the parser looks for a way out of an error; a token of no length would not bring it on.
    if (valid[MISSING_NAME] == valid[LINE_END]) {
        return false;
    }

    lexer->mark_end(lexer);
    lexer->result_symbol = valid[LINE_END] ? LINE_END : MISSING_NAME;
    return valid[LINE_END] ? lexer->eof(lexer) || is_line_end(lexer->lookahead) : sentence_begins(lexer);
}
