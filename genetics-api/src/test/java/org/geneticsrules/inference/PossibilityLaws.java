package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Possibility.Contradicted;
import org.geneticsrules.inference.Possibility.Excluded;
import org.geneticsrules.inference.Possibility.Possible;
import org.geneticsrules.inference.Possibility.Undecided;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Worlds;

/** What is possible in random pedigrees, against a list of all worlds. */
@Once
class PossibilityLaws {

    private static final long MOST_CHOICES = 50_000;

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    private static String name(AllelePair pair) {
        return String.join("/", pair.alleles().stream().map(Allele::id).toList());
    }

    /** Whether some world has the records and these genotypes too; as if each animal had been tested without error. */
    private static Optional<Boolean> any(
            RandomPedigree random, Kindred kindred, Map<String, Map<String, AllelePair>> genotypes) {
        List<Kindred.Member> members = new ArrayList<>();
        for (Kindred.Member member : kindred.members()) {
            List<Kindred.Test> tests = new ArrayList<>(member.tests());
            genotypes
                    .getOrDefault(member.id(), Map.of())
                    .forEach((locus, pair) -> tests.add(new Kindred.Test(locus, Set.of(name(pair)), Probability.ZERO)));
            members.add(new Kindred.Member(member.id(), member.sex(), member.population(), member.sightings(), tests));
        }
        return Worlds.any(random.genome(), new Kindred(members, kindred.litters(), kindred.confusions()), MOST_CHOICES);
    }

    @Property(tries = 100)
    void possible_is_what_some_world_has(@ForAll("pedigrees") RandomPedigree random) {
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Optional<Boolean> fit = any(random, kindred, Map.of());
        Inference inference =
                Inference.of(CompiledModel.of(random.model()), RecordedKindred.pedigree(random.model(), kindred));
        int excluded = 0;
        for (String locus : random.model().loci().keySet()) {
            Possibilities found = inference.possible(locus);
            for (Kindred.Member member : kindred.members()) {
                for (Map.Entry<AllelePair, Possibility> one :
                        found.of(member.id()).entrySet()) {
                    AllelePair pair = one.getKey();
                    Supplier<String> what = () -> member.id() + " " + pair + ": " + one.getValue();
                    assertEquals(one.getValue(), found.of(member.id(), pair));
                    assertFalse(one.getValue() instanceof Undecided);
                    if (one.getValue() instanceof Possible fits) {
                        // a world with the whole witness is one with the pair
                        assertEquals(pair, fits.witness().get(member.id()).get(locus));
                        if (fit.orElse(false)) {
                            any(random, kindred, fits.witness()).ifPresent(world -> assertTrue(world, what));
                        }
                    } else if (one.getValue() instanceof Contradicted) {
                        assertFalse(fit.orElse(false));
                    } else {
                        excluded++;
                        if (fit.orElse(false)) {
                            any(random, kindred, Map.of(member.id(), Map.of(locus, pair)))
                                    .ifPresent(world -> assertFalse(world, what));
                        }
                    }
                }
            }
        }
        Statistics.collect(
                fit.isEmpty()
                        ? "too large to try"
                        : !fit.get() ? "contradictory" : excluded > 0 ? "something excluded" : "all possible");
        Statistics.coverage(coverage -> {
            // 19 of 100 are: that none of 100 is happens once in 10^9
            coverage.check("contradictory").count(count -> count > 0);
            coverage.check("something excluded").percentage(share -> share > 20);
        });
    }

    /**
     * Without room for a table nothing is guessed: what elimination leaves is undecided, and what it strikes out stays excluded,
     * be it that there is a contradiction beside it.
     */
    @Property(tries = 30)
    void nothing_is_guessed(@ForAll("pedigrees") RandomPedigree random) {
        Kindred kindred = RecordedKindred.scored(random.kindred());
        Inference inference =
                Inference.of(CompiledModel.of(random.model()), RecordedKindred.pedigree(random.model(), kindred));
        String locus = random.model().loci().keySet().iterator().next();
        Possibilities narrow = inference.within(0).possible(locus);
        Possibilities wide = inference.possible(locus);
        for (Kindred.Member member : kindred.members()) {
            wide.of(member.id()).forEach((pair, possibility) -> {
                Possibility narrower = narrow.of(member.id(), pair);
                boolean soundly = possibility instanceof Contradicted && narrower instanceof Excluded;
                if (!narrower.equals(possibility) && !soundly) {
                    assertInstanceOf(Undecided.class, narrower);
                }
            });
        }
    }
}
