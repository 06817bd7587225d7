package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.brute.Kindred;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Contradictions of random pedigrees against trying sets of records one by one. */
@Once
class ContradictionLaws {

    private static final int MOST_RECORDS = 12;

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    /** The family of a random pedigree with few other records, drawn blindly, so that often several contradict one another. */
    private static Kindred muddled(RandomPedigree random) {
        Kindred kindred = RecordedKindred.scored(random.kindred());
        SplittableRandom dice = new SplittableRandom(random.seed());
        List<Kindred.Member> members = new ArrayList<>();
        for (Kindred.Member member : kindred.members()) {
            List<Kindred.Test> tests = new ArrayList<>();
            List<String> loci = random.genome().loci();
            String locus = loci.get(dice.nextInt(loci.size()));
            List<String> pairs = random.genome()
                    .pairs(locus, kindred.sex(member.id()).isEmpty() ? "female" : kindred.sex(member.id()));
            String pair = pairs.get(dice.nextInt(pairs.size()));
            if (!pair.isEmpty() && dice.nextInt(4) > 0) {
                tests.add(new Kindred.Test(locus, Set.of(pair), Probability.ZERO));
            }
            List<Kindred.Sighting> sightings = dice.nextInt(4) == 0 ? member.sightings() : List.of();
            String sex = dice.nextInt(3) == 0 ? member.sex() : "";
            members.add(new Kindred.Member(member.id(), sex, member.population(), sightings, tests));
        }
        return new Kindred(members, kindred.litters(), List.of());
    }

    private static Contradictions found(RandomPedigree random, Kindred kindred) {
        return Inference.of(CompiledModel.of(random.model()), RecordedKindred.pedigree(random.model(), kindred))
                .contradictions();
    }

    @Property(tries = 100)
    void contradictions_are_irreducible(@ForAll("pedigrees") RandomPedigree random, @ForAll boolean muddled) {
        Statistics.collect(irreducible(random, muddled));
        Statistics.coverage(coverage -> coverage.check("none").percentage(share -> share > 15));
    }

    /** Of each kind about one in seven is met at random, so these were looked for. */
    @ParameterizedTest
    @CsvSource({
        "animals by themselves, 17, false",
        "animals by themselves, 4, true",
        "animals by themselves, 57, true",
        "relatives, 7, false",
        "relatives, 2, true",
        "relatives, 6, true"
    })
    void contradictions_of_each_kind_are_irreducible(String kind, long seed, boolean muddled) {
        assertEquals(kind, irreducible(RandomPedigrees.pedigree(seed), muddled));
    }

    /** Leaves out record by record, and tells what was met. */
    private static String irreducible(RandomPedigree random, boolean muddled) {
        Kindred kindred = muddled ? muddled(random) : RecordedKindred.scored(random.kindred());
        Contradictions found = found(random, kindred);
        assertTrue(found.undecided().isEmpty());
        BruteContradictions brute = new BruteContradictions(random, kindred);
        BruteContradictions.tried(() -> brute.fitWithout(Set.of()))
                .ifPresent(fit -> assertEquals(fit, found.isConsistent()));
        String met = found.isConsistent() ? "none" : "animals by themselves";
        for (Contradiction one : found.all()) {
            Set<RecordRef> records = new LinkedHashSet<>(one.records());
            assertEquals(one.records().size(), records.size());
            BruteContradictions.tried(() -> brute.fit(records)).ifPresent(fit -> assertFalse(fit, one::toString));
            for (RecordRef dropped : one.records()) {
                Set<RecordRef> rest = new LinkedHashSet<>(records);
                rest.remove(dropped);
                BruteContradictions.tried(() -> brute.fit(rest))
                        .ifPresent(fit -> assertTrue(fit, () -> one + " without " + dropped));
            }
            if (records.stream().anyMatch(ref -> ref instanceof RecordRef.DamOf || ref instanceof RecordRef.SiresOf)) {
                met = "relatives";
            }
        }
        return met;
    }

    @Property(tries = 120)
    void smallest_and_fewest_are_those_found_by_trying_all(
            @ForAll("pedigrees") RandomPedigree random, @ForAll boolean muddled) {
        smallestAndFewest(random, muddled);
    }

    /** Rare among random pedigrees, so these were looked for. */
    @ParameterizedTest
    @CsvSource({"one, 2", "one, 13", "one, 15", "several, 57", "several, 130", "several, 147"})
    void one_record_or_several_are_the_fewest(String number, long seed) {
        assertEquals(number, smallestAndFewest(RandomPedigrees.pedigree(seed), true));
    }

    /** Compares with trying all sets, and tells what was met. */
    private static String smallestAndFewest(RandomPedigree random, boolean muddled) {
        Kindred kindred = muddled ? muddled(random) : RecordedKindred.scored(random.kindred());
        BruteContradictions brute = new BruteContradictions(random, kindred);
        String met = "other";
        if (brute.records().size() <= MOST_RECORDS) {
            Contradictions found = found(random, kindred);
            met = found.isConsistent() ? "consistent" : "too large to try";
            if (!found.isConsistent()) {
                Optional<Integer> smallest = BruteContradictions.tried(brute::smallest);
                smallest.ifPresent(size -> {
                    assertEquals(
                            size,
                            found.all().stream()
                                    .mapToInt(one -> one.records().size())
                                    .min()
                                    .orElseThrow());
                    // of several sets of relatives each has its own smallest
                    boolean related = found.fewestToRecheck(1).size() == 1;
                    for (Contradiction one : found.all()) {
                        boolean small = one.records().size() == size;
                        assertTrue(related ? one.smallest() == small : one.smallest() || !small, one::toString);
                    }
                });
                Optional<Set<Set<RecordRef>>> fewest = BruteContradictions.tried(brute::fewest);
                if (fewest.isPresent()) {
                    assertEquals(fewest.get(), together(found.fewestToRecheck(1000)));
                    met = fewest.get().iterator().next().size() > 1 ? "several" : "one";
                }
            }
        }
        return met;
    }

    /** One set of each kindred, in all combinations. */
    private static Set<Set<RecordRef>> together(List<FewestToRecheck> each) {
        Set<Set<RecordRef>> all = new LinkedHashSet<>();
        all.add(new LinkedHashSet<>());
        for (FewestToRecheck kindred : each) {
            assertTrue(kindred.isDecided());
            assertFalse(kindred.more());
            Set<Set<RecordRef>> more = new LinkedHashSet<>();
            for (Set<RecordRef> one : all) {
                kindred.sets().forEach(set -> {
                    Set<RecordRef> both = new LinkedHashSet<>(one);
                    both.addAll(set);
                    more.add(both);
                });
            }
            all = more;
        }
        return all;
    }
}
