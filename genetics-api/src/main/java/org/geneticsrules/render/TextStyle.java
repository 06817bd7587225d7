package org.geneticsrules.render;

import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;

/**
 * How text is laid out: how wide, and whether loci and alleles go by letters or by words.
 *
 * <p>Immutable and thread-safe.
 *
 * @param width the most characters in a line, at least {@value #NARROWEST}
 * @param letters true if loci and alleles go by their letters, false if by their titles where they have any
 * @param titles titles of loci, by locus id
 */
public record TextStyle(int width, boolean letters, Map<String, String> titles) {

    /** The narrowest line that a table of looks fits in. */
    public static final int NARROWEST = 60;

    private static final int STANDARD_WIDTH = 100;

    /**
     * Copies the titles.
     *
     * @param width the most characters in a line
     * @param letters whether letters are shown
     * @param titles titles of loci
     * @throws IllegalArgumentException if the width is less than {@value #NARROWEST}
     */
    public TextStyle {
        if (width < NARROWEST) {
            throw new IllegalArgumentException("a line needs at least " + NARROWEST + " characters, but was " + width);
        }
        titles = ImmutableMap.copyOf(titles);
    }

    /**
     * Returns the standard style: lines of at most 100 characters, with letters, without titles of loci.
     *
     * @return the style
     */
    public static TextStyle standard() {
        return new TextStyle(STANDARD_WIDTH, true, ImmutableMap.of());
    }

    /**
     * Returns this style with the titles of a model's loci.
     *
     * @param model the model whose loci are named
     * @return a copy
     */
    public TextStyle naming(Model model) {
        ImmutableMap.Builder<String, String> named = ImmutableMap.builder();
        for (Locus locus : model.loci().values()) {
            locus.title().ifPresent(title -> named.put(locus.id(), title));
        }
        return new TextStyle(width, letters, named.buildOrThrow());
    }

    /**
     * Returns this style with words in the place of letters.
     *
     * @return a copy
     */
    public TextStyle withoutLetters() {
        return new TextStyle(width, false, titles);
    }

    /**
     * Returns this style with lines of another width.
     *
     * @param characters the most characters in a line
     * @return a copy
     */
    public TextStyle wide(int characters) {
        return new TextStyle(characters, letters, titles);
    }

    /** The locus by letter with its title beside, or by title alone. */
    String locus(String id) {
        Optional<String> title = Optional.ofNullable(titles.get(id));
        return letters ? id + title.map(words -> " (" + words + ")").orElse("") : title.orElse(id);
    }

    /** The locus as short as it can be named. */
    String shortLocus(String id) {
        return letters ? id : Objects.requireNonNull(titles.getOrDefault(id, id));
    }

    String pair(AllelePair pair) {
        if (pair.alleles().isEmpty()) {
            return "none";
        }
        return letters
                ? pair.toString()
                : pair.alleles().stream().map(TextStyle::word).collect(Collectors.joining(" / "));
    }

    String allele(Allele allele) {
        return letters ? allele.symbol() : word(allele);
    }

    String pairs(List<AllelePair> pairs) {
        return pairs.stream().map(this::pair).collect(Collectors.joining(letters ? " or " : "; or "));
    }

    private static String word(Allele allele) {
        return allele.title().orElse(allele.symbol());
    }
}
