package org.geneticsrules.linkage;

import com.google.common.collect.ImmutableList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.geneticsrules.trait.Sex;

/** The way in which the loci of a linkage group are handed down. */
public enum Transmission {
    /** Two strands in both sexes, one from each parent. */
    AUTOSOMAL("autosomal", 2, 2),
    /** On the X: two strands in females, one in males, which comes from the dam. */
    X("X", 2, 1),
    /** On the Y: one strand in males, from the sire. */
    Y("Y", 0, 1),
    /** On the Z: two strands in males, one in females, which comes from the sire. */
    Z("Z", 1, 2),
    /** On the W: one strand in females, from the dam. */
    W("W", 1, 0),
    /** Outside the nucleus: one strand in both sexes, from the dam. */
    MATERNAL("maternal", 1, 1);

    private final String word;
    private final int inFemales;
    private final int inMales;

    Transmission(String word, int inFemales, int inMales) {
        this.word = word;
        this.inFemales = inFemales;
        this.inMales = inMales;
    }

    /**
     * Returns the words of all ways.
     *
     * @return words in declared order
     */
    public static List<String> words() {
        return Stream.of(values()).map(Transmission::word).collect(ImmutableList.toImmutableList());
    }

    /**
     * Finds a way by its word.
     *
     * @param word a word
     * @return the way, or empty if the word names none
     */
    public static Optional<Transmission> of(String word) {
        int position = words().indexOf(word);
        return position < 0 ? Optional.empty() : Optional.of(values()[position]);
    }

    /**
     * Returns the word for this way in documents.
     *
     * @return for example {@code autosomal} or {@code X}
     */
    public String word() {
        return word;
    }

    /**
     * Returns how many strands an animal has.
     *
     * @param sex its sex
     * @return 2, 1 or 0
     */
    public int strands(Sex sex) {
        return sex == Sex.FEMALE ? inFemales : inMales;
    }

    /**
     * Returns the sex whose two sex chromosomes differ, if this way depends on them.
     *
     * @return male for X and Y, female for Z and W, else empty
     */
    public Optional<Sex> heterogametic() {
        return switch (this) {
            case X, Y -> Optional.of(Sex.MALE);
            case Z, W -> Optional.of(Sex.FEMALE);
            case AUTOSOMAL, MATERNAL -> Optional.empty();
        };
    }

    /**
     * Tells whether a parent hands a strand down to a kit.
     *
     * @param parent sex of the parent
     * @param kit sex of the kit
     * @return true if the kit has a strand from this parent
     */
    public boolean passes(Sex parent, Sex kit) {
        return switch (this) {
            case AUTOSOMAL -> true;
            case X -> parent == Sex.FEMALE || kit == Sex.FEMALE;
            case Y -> parent == Sex.MALE && kit == Sex.MALE;
            case Z -> parent == Sex.MALE || kit == Sex.MALE;
            case W -> parent == Sex.FEMALE && kit == Sex.FEMALE;
            case MATERNAL -> parent == Sex.FEMALE;
        };
    }

    /**
     * Tells whether strands can recombine in some parent.
     *
     * @return true if an animal of some sex has two strands
     */
    public boolean recombines() {
        return inFemales == 2 || inMales == 2;
    }

    /**
     * Returns what genotype text writes in place of a missing second strand.
     *
     * @return the symbol of the partner chromosome, {@code Y} or {@code W}; empty where notation has none
     */
    public Optional<String> partner() {
        return switch (this) {
            case X -> Optional.of("Y");
            case Z -> Optional.of("W");
            case AUTOSOMAL, Y, W, MATERNAL -> Optional.empty();
        };
    }
}
