package org.geneticsrules.linkage;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;

/**
 * Loci that are handed down on one chromosome, in map order.
 *
 * @param id its name
 * @param title words for it
 * @param transmission the way it is handed down
 * @param loci its loci in map order
 * @param recombination how often neighbours are separated
 * @param evidence id of its evidence, if stated
 */
public record LinkageGroup(
        String id,
        Optional<String> title,
        Transmission transmission,
        List<String> loci,
        Recombination recombination,
        Optional<String> evidence) {

    /** Most intervals that patterns of crossovers can tell apart. */
    public static final int MOST_IN_PATTERNS = 30;

    /** Most intervals whose patterns are listed: a million. */
    private static final int MOST_LISTED = 20;

    /**
     * Copies the loci.
     *
     * @param id its name
     * @param title words for it
     * @param transmission the way it is handed down
     * @param loci its loci
     * @param recombination how often neighbours are separated
     * @param evidence id of its evidence
     */
    public LinkageGroup {
        loci = ImmutableList.copyOf(loci);
    }

    /**
     * Returns an autosomal group with the same recombination fractions in both sexes.
     *
     * @param id its name
     * @param loci its loci in map order
     * @param fractions one fraction for each interval between neighbours
     * @return the group
     */
    public static LinkageGroup autosomal(String id, List<String> loci, List<Probability> fractions) {
        return of(id, Transmission.AUTOSOMAL, loci, Recombination.Fractions.of(fractions));
    }

    /**
     * Returns a group of one locus, which has nothing to recombine with.
     *
     * @param transmission the way it is handed down
     * @param locus id of the locus, by which the group is named too
     * @return the group
     */
    public static LinkageGroup single(Transmission transmission, String locus) {
        return of(locus, transmission, List.of(locus), Recombination.Fractions.of(List.of()));
    }

    /**
     * Returns a group without title and evidence.
     *
     * @param id its name
     * @param transmission the way it is handed down
     * @param loci its loci in map order
     * @param recombination how often neighbours are separated
     * @return the group
     */
    public static LinkageGroup of(
            String id, Transmission transmission, List<String> loci, Recombination recombination) {
        return new LinkageGroup(id, Optional.empty(), transmission, loci, recombination, Optional.empty());
    }

    /**
     * Returns the names of the intervals.
     *
     * @return {@code B-W} for neighbours B and W, in map order
     */
    public List<String> intervals() {
        List<String> names = new ArrayList<>();
        for (int i = 1; i < loci.size(); i++) {
            names.add(loci.get(i - 1) + "-" + loci.get(i));
        }
        return ImmutableList.copyOf(names);
    }

    /**
     * Returns the chance of each set of intervals that recombine in a gamete.
     *
     * @param parent sex of the parent
     * @return chances by set, a whole number in which bit i stands for interval i; they sum to 1
     * @throws TooLargeException if fractions of more than {@value #MOST_LISTED} intervals would have to be multiplied out
     */
    public Map<Integer, Probability> patterns(Sex parent) {
        ImmutableMap.Builder<Integer, Probability> chances = ImmutableMap.builder();
        if (recombination instanceof Recombination.Crossovers table) {
            table.patterns().forEach((pattern, chance) -> chances.put(bits(pattern), chance));
            return chances.buildOrThrow();
        }
        List<Probability> fractions = ((Recombination.Fractions) recombination).of(parent);
        if (fractions.size() > MOST_LISTED) {
            throw new TooLargeException(
                    "patterns of crossovers",
                    Math.pow(2, fractions.size()),
                    1 << MOST_LISTED,
                    "follow the strands from locus to locus instead.");
        }
        for (int set = 0; set < 1 << fractions.size(); set++) {
            Probability chance = Probability.ONE;
            for (int i = 0; i < fractions.size(); i++) {
                Probability r = fractions.get(i);
                chance = chance.times((set >> i & 1) == 1 ? r : r.complement());
            }
            chances.put(set, chance);
        }
        return chances.buildOrThrow();
    }

    private int bits(String pattern) {
        return recombining(pattern)
                .orElseThrow(() -> new IllegalArgumentException(
                        "\"" + pattern + "\" is no pattern of the intervals " + intervals()));
    }

    /**
     * Reads a pattern of crossovers.
     *
     * @param pattern {@code none}, or names of intervals in map order with a space between
     * @return the set of intervals that recombine, a whole number in which bit i stands for interval i; empty if the pattern names
     *     anything else
     */
    public Optional<Integer> recombining(String pattern) {
        return pattern.equals("none") ? Optional.of(0) : recombining(pattern, intervals(), 0);
    }

    /** Takes the first interval off a pattern; ids of loci may hold spaces, so the spaces alone do not divide it. */
    private static Optional<Integer> recombining(String pattern, List<String> intervals, int from) {
        for (int i = from; i < intervals.size() && i < MOST_IN_PATTERNS; i++) {
            String name = intervals.get(i);
            if (pattern.equals(name)) {
                return Optional.of(1 << i);
            }
            if (pattern.startsWith(name + " ")) {
                int bit = 1 << i;
                Optional<Integer> rest = recombining(pattern.substring(name.length() + 1), intervals, i + 1);
                if (rest.isPresent()) {
                    return rest.map(set -> set | bit);
                }
            }
        }
        return Optional.empty();
    }

    /**
     * Returns the group in words.
     *
     * @return for example {@code loci B, W are linked on one autosome in this order, recombining in B-W 1/10}
     */
    public String words() {
        String place = loci.size() == 1 ? "locus " + loci.get(0) + " is " : "loci " + String.join(", ", loci) + " are ";
        place += switch (transmission) {
            case AUTOSOMAL -> (loci.size() == 1 ? "" : "linked ") + "on one autosome";
            case X, Y, Z, W -> (loci.size() == 1 ? "" : "linked ") + "on the " + transmission.word();
            case MATERNAL -> "handed down by the dam alone, outside the nucleus";
        };
        if (loci.size() == 1 || !transmission.recombines()) {
            return place;
        }
        place += " in this order";
        if (recombination instanceof Recombination.Fractions fractions) {
            return fractions.female().equals(fractions.male())
                    ? place + ", recombining in " + named(fractions.female())
                    : place + ", recombining in females in " + named(fractions.female()) + ", in males in "
                            + named(fractions.male());
        }
        StringJoiner patterns = new StringJoiner(", ");
        ((Recombination.Crossovers) recombination)
                .patterns()
                .forEach((pattern, chance) -> patterns.add(pattern + " " + chance));
        return place + ", with the patterns of crossovers " + patterns;
    }

    private String named(List<Probability> fractions) {
        StringJoiner words = new StringJoiner(", ");
        for (int i = 0; i < fractions.size(); i++) {
            words.add(intervals().get(i) + " " + fractions.get(i));
        }
        return words.toString();
    }

    /**
     * Returns the address of the group in the model's document.
     *
     * @return a JSON Pointer
     */
    public String pointer() {
        return Pointer.of("groups", id);
    }
}
