package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.List;

/** Lines of text under construction, wrapped at blanks. Not thread-safe. */
final class TextLines {

    private final int width;
    private final StringBuilder out = new StringBuilder();

    TextLines(int width) {
        this.width = width;
    }

    /** A heading with a blank line before it. */
    TextLines heading(String text) {
        return blank().line(text).line("-".repeat(text.length()));
    }

    TextLines blank() {
        return out.length() == 0 ? this : line("");
    }

    TextLines line(String text) {
        out.append(text.stripTrailing()).append('\n');
        return this;
    }

    TextLines paragraph(String text) {
        return hanging("", "", text);
    }

    TextLines item(String text) {
        return hanging("- ", "  ", text);
    }

    /** A paragraph whose first line begins with one text and whose other lines begin with another. */
    TextLines hanging(String first, String rest, String text) {
        String start = first;
        for (String part : wrap(text, width - Math.max(first.length(), rest.length()))) {
            line(start + part);
            start = rest;
        }
        return this;
    }

    TextLines lines(List<String> ready) {
        ready.forEach(this::line);
        return this;
    }

    /** Breaks a text at blanks; a word that is wider than a line is broken within. */
    static List<String> wrap(String text, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder current = new StringBuilder();
        for (String next : text.strip().split("\\s+", -1)) {
            String word = next;
            if (current.length() > 0 && current.length() + 1 + word.length() > width) {
                lines.add(current.toString());
                current.setLength(0);
            }
            while (word.length() > width) {
                lines.add(word.substring(0, width));
                word = word.substring(width);
            }
            current.append(current.length() > 0 ? " " : "").append(word);
        }
        lines.add(current.toString());
        return lines;
    }

    @Override
    public String toString() {
        return out.toString();
    }
}
