package org.geneticsrules.inference;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CancellationException;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.inference.Conclusions.Standing;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.junit.jupiter.api.Test;

/** What is foreseen of the cost of conclusions, and conclusions about some loci alone. */
@Once
class CostLaws {

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    private static Inference inference(RandomPedigree random) {
        Pedigree pedigree = RecordedKindred.pedigree(random.model(), random.kindred());
        return Inference.of(CompiledModel.of(random.model()), pedigree)
                .with(RecordedKindred.confusions(random.kindred()));
    }

    /** Relatives have a number that is too large if and only if that was foreseen, whatever is allowed. */
    @Property(tries = 200)
    void what_is_foreseen_is_what_is_found(
            @ForAll("pedigrees") RandomPedigree random, @ForAll @IntRange(max = 9) int doublings) {
        Inference allowed = inference(random).within((1 << doublings) - 1);
        Set<String> loci = random.model().loci().keySet();
        Conclusions found = allowed.conclude(loci);
        List<String> told = new ArrayList<>();
        for (Cost cost : allowed.costs(loci)) {
            told.addAll(cost.animals());
            boolean tooLarge = cost.animals().stream()
                    .anyMatch(id -> loci.stream().anyMatch(locus -> found.standing(id, locus) == Standing.TOO_LARGE));
            assertFalse(cost.within() && tooLarge, cost::toString);
            Statistics.label("too large").collect(tooLarge).coverage(c -> {
                c.check(true).percentage(p -> p > 10);
                c.check(false).percentage(p -> p > 20);
            });
            Statistics.label("told")
                    .collect(cost.within() != tooLarge)
                    .coverage(c -> c.check(true).percentage(p -> p > 95));
        }
        assertEquals(random.kindred().members().size(), told.size());
        assertEquals(told.size(), Set.copyOf(told).size(), "each animal once");
    }

    @Property(tries = 150)
    void other_loci_change_nothing(@ForAll("pedigrees") RandomPedigree random, @ForAll @IntRange(max = 5) int which) {
        List<String> all = List.copyOf(random.model().loci().keySet());
        String locus = all.get(which % all.size());
        Inference asked = inference(random);
        Conclusions whole = asked.conclude();
        Conclusions only = asked.concludeOnly(Set.of(locus));
        int known = 0;
        for (String id :
                random.kindred().members().stream().map(member -> member.id()).toList()) {
            if (whole.standing(id, locus) == Standing.EXACT && only.standing(id, locus) == Standing.EXACT) {
                known++;
                only.at(id, locus)
                        .orElseThrow()
                        .chances()
                        .forEach((pair, chance) -> assertEquals(
                                whole.at(id, locus).orElseThrow().chances().getOrDefault(pair, 0.0), chance, 1e-12));
            } else {
                assertEquals(whole.standing(id, locus), only.standing(id, locus));
            }
        }
        Statistics.label("known").collect(known > 0).coverage(c -> c.check(true).percentage(p -> p > 50));
    }

    /** Whoever watches is called while it is worked, and ends a question by throwing. */
    @Test
    void a_question_can_be_ended() {
        Inference asked = inference(RandomPedigrees.pedigree(1));
        int[] called = {0};
        asked.watched(() -> called[0]++).conclude();
        assertTrue(called[0] > 0);
        for (int after = 0; after < called[0]; after++) {
            int[] left = {after};
            Inference ended = asked.watched(() -> {
                if (left[0]-- == 0) {
                    throw new CancellationException("enough");
                }
            });
            assertThrows(CancellationException.class, ended::conclude);
        }
        boolean still;
        Thread.currentThread().interrupt();
        try {
            assertThrows(CancellationException.class, asked::conclude);
            assertThrows(CancellationException.class, asked::contradictions);
        } finally {
            still = Thread.interrupted(); // or other tests of this thread would be ended
        }
        assertTrue(still, "it leaves the flag for its caller");
        asked.conclude();
    }
}
