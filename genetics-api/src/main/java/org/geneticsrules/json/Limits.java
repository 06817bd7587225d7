package org.geneticsrules.json;

/**
 * How large a document may be before it is refused.
 *
 * <p>The standard limits leave room for any model a person would write and keep the work that a hostile file can cause small. A limit
 * on a number of parts is a limit on what the checks compare with one another.
 *
 * @param bytes most bytes of a file; reading stops at the first one above
 * @param depth most objects and lists within one another, at most 500
 * @param textLength most characters (UTF-16 units) of a text
 * @param nameLength most characters of a member's name
 * @param numberLength most characters of a number, and the largest power of ten it may stand for or be divided by
 * @param items most items of any list and members of any object
 * @param loci most loci of a model
 * @param alleles most alleles of a locus
 * @param traits most traits of a catalogue or a model
 * @param cases most cases of a trait, and most looks of a sense of a name
 * @param masks most masks of a model
 */
public record Limits(
        int bytes,
        int depth,
        int textLength,
        int nameLength,
        int numberLength,
        int items,
        int loci,
        int alleles,
        int traits,
        int cases,
        int masks) {

    /** A deeper tree could exhaust the stack of a small thread. */
    private static final int GREATEST_DEPTH = 500;

    /**
     * Checks the ranges.
     *
     * @param bytes most bytes of a file
     * @param depth most objects and lists within one another, at most 500
     * @param textLength most characters of a text
     * @param nameLength most characters of a name
     * @param numberLength most characters of a number
     * @param items most items of a list
     * @param loci most loci of a model
     * @param alleles most alleles of a locus
     * @param traits most traits
     * @param cases most cases of a trait
     * @param masks most masks of a model
     * @throws IllegalArgumentException if a limit is less than 1, or the depth more than 500
     */
    public Limits {
        int[] all = {bytes, depth, textLength, nameLength, numberLength, items, loci, alleles, traits, cases, masks};
        for (int limit : all) {
            if (limit < 1) {
                throw new IllegalArgumentException("a limit must be at least 1, but was " + limit);
            }
        }
        if (depth > GREATEST_DEPTH) {
            throw new IllegalArgumentException("the depth must be at most " + GREATEST_DEPTH + ", but was " + depth);
        }
    }

    /**
     * Returns the standard limits: 4 MiB, depth 64, texts of 20,000, names of 200 and numbers of 100 characters, 4,000 items, 250
     * loci of 64 alleles, 1,000 traits of 250 cases, 250 masks.
     *
     * @return the limits used unless others are given
     */
    public static Limits standard() {
        return new Limits(4 << 20, 64, 20_000, 200, 100, 4_000, 250, 64, 1_000, 250, 250);
    }

    /**
     * Returns limits for the pedigree of a whole registry: those of {@link #standard}, but 64 MiB and 200,000 items. Allow a
     * gibibyte of memory for every 20 MiB.
     *
     * @return limits for files that come from a trusted place
     */
    public static Limits registry() {
        return standard().withBytes(64 << 20).withItems(200_000);
    }

    /**
     * Returns these limits with another size of file.
     *
     * @param most most bytes of a file
     * @return a copy
     */
    public Limits withBytes(int most) {
        return new Limits(
                most, depth, textLength, nameLength, numberLength, items, loci, alleles, traits, cases, masks);
    }

    /**
     * Returns these limits with another depth.
     *
     * @param most most objects and lists within one another, 1 to 500
     * @return a copy
     */
    public Limits withDepth(int most) {
        return new Limits(
                bytes, most, textLength, nameLength, numberLength, items, loci, alleles, traits, cases, masks);
    }

    /**
     * Returns these limits with another length of texts.
     *
     * @param most most characters of a text
     * @return a copy
     */
    public Limits withTextLength(int most) {
        return new Limits(bytes, depth, most, nameLength, numberLength, items, loci, alleles, traits, cases, masks);
    }

    /**
     * Returns these limits with another length of names.
     *
     * @param most most characters of a member's name
     * @return a copy
     */
    public Limits withNameLength(int most) {
        return new Limits(bytes, depth, textLength, most, numberLength, items, loci, alleles, traits, cases, masks);
    }

    /**
     * Returns these limits with another length of numbers.
     *
     * @param most most characters, and the largest power of ten
     * @return a copy
     */
    public Limits withNumberLength(int most) {
        return new Limits(bytes, depth, textLength, nameLength, most, items, loci, alleles, traits, cases, masks);
    }

    /**
     * Returns these limits with another length of lists and objects.
     *
     * @param most most items or members
     * @return a copy
     */
    public Limits withItems(int most) {
        return new Limits(
                bytes, depth, textLength, nameLength, numberLength, most, loci, alleles, traits, cases, masks);
    }

    /**
     * Returns these limits with another number of loci.
     *
     * @param most most loci of a model
     * @return a copy
     */
    public Limits withLoci(int most) {
        return new Limits(
                bytes, depth, textLength, nameLength, numberLength, items, most, alleles, traits, cases, masks);
    }

    /**
     * Returns these limits with another number of alleles.
     *
     * @param most most alleles of a locus
     * @return a copy
     */
    public Limits withAlleles(int most) {
        return new Limits(bytes, depth, textLength, nameLength, numberLength, items, loci, most, traits, cases, masks);
    }

    /**
     * Returns these limits with another number of traits.
     *
     * @param most most traits of a catalogue or a model
     * @return a copy
     */
    public Limits withTraits(int most) {
        return new Limits(bytes, depth, textLength, nameLength, numberLength, items, loci, alleles, most, cases, masks);
    }

    /**
     * Returns these limits with another number of cases.
     *
     * @param most most cases of a trait
     * @return a copy
     */
    public Limits withCases(int most) {
        return new Limits(
                bytes, depth, textLength, nameLength, numberLength, items, loci, alleles, traits, most, masks);
    }

    /**
     * Returns these limits with another number of masks.
     *
     * @param most most masks of a model
     * @return a copy
     */
    public Limits withMasks(int most) {
        return new Limits(
                bytes, depth, textLength, nameLength, numberLength, items, loci, alleles, traits, cases, most);
    }
}
