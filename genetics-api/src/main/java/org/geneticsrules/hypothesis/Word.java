package org.geneticsrules.hypothesis;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * What is carried at some or all of the loci read, with its place among all that could be: fewest genotypes other than the reference
 * first, then fewest heterozygous ones, then the declared order of the loci and of their genotypes, the sire's before the dam's.
 *
 * <p>Of two words about the same loci, the smaller stays the smaller when both are told the same of another locus. The search rests on
 * that.
 *
 * @param letters for each position read, the number of the letter; -1 where nothing is said
 * @param differing how many genotypes differ from the reference
 * @param heterozygous how many are heterozygous
 * @param ranks places of the genotypes among those of their loci, first of the one animal in declared order of loci, then of the other
 */
@SuppressWarnings("ArrayRecordComponent") // compared by the order below alone
record Word(int[] letters, int differing, int heterozygous, int[] ranks) {

    static final Comparator<Word> SMALLEST_FIRST = Comparator.comparingInt(Word::differing)
            .thenComparingInt(Word::heterozygous)
            .thenComparing(Word::ranks, Arrays::compare);

    static Word empty(int positions, int animals) {
        int[] letters = new int[positions];
        int[] ranks = new int[positions * animals];
        Arrays.fill(letters, -1);
        Arrays.fill(ranks, -1);
        return new Word(letters, 0, 0, ranks);
    }

    /** This word with a letter where nothing was said. */
    Word with(int position, int number, Carried.Letter letter, int declared) {
        int[] longer = letters.clone();
        longer[position] = number;
        int[] places = ranks.clone();
        List<Carried.Held> held = letter.held();
        for (int animal = 0; animal < held.size(); animal++) {
            places[animal * letters.length + declared] = held.get(animal).rank();
        }
        return new Word(longer, differing + letter.differing(), heterozygous + letter.heterozygous(), places);
    }

    /** This word and one about all other positions together. */
    Word and(Word other) {
        int[] both = letters.clone();
        int[] places = ranks.clone();
        for (int i = 0; i < both.length; i++) {
            both[i] = Math.max(both[i], other.letters[i]);
        }
        for (int i = 0; i < places.length; i++) {
            places[i] = Math.max(places[i], other.ranks[i]);
        }
        return new Word(both, differing + other.differing, heterozygous + other.heterozygous, places);
    }
}
