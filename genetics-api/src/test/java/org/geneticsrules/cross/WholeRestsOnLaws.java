package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.cross.RandomMatings.Known;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.OtherWords;
import org.geneticsrules.testing.brute.Animal;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Mating;
import org.geneticsrules.trait.Sex;

/**
 * Relevant evidence in models of the whole language: a statement that an answer does not cite may say anything else without changing it,
 * and one that it cites may not. It says something else in the document, which the reference answers again.
 */
class WholeRestsOnLaws {

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 300)
    void uncited_statements_may_say_anything_and_cited_ones_may_not(@ForAll("seeds") long seed) {
        citesWhatMatters(Known.draw(seed));
    }

    static void citesWhatMatters(Known known) {
        Model model = known.model();
        View view = known.looking().withoutSex();
        if (!known.hasKits(view.census())) {
            return;
        }
        Set<String> cited = known.cross().explain(view).statements();
        Kits kits = new Kits(known);
        Map<Object, Probability> before = kits.answer(known.genome()).orElseThrow();
        Map<Animal, Object> eachBefore = kits.each;
        OtherWords others = new OtherWords(model);
        for (String pointer : model.statements().keySet()) {
            boolean tells = false;
            List<Map<String, Object>> documents = others.at(pointer);
            for (Map<String, Object> changed : documents) {
                Optional<Map<Object, Probability>> after = kits.answer(new Genome(changed));
                if (!cited.contains(pointer)) {
                    assertEquals(before, after.orElse(before), () -> known + " does not cite " + pointer);
                }
                tells |= !kits.each.equals(eachBefore) || !after.equals(Optional.of(before));
            }
            if (!documents.isEmpty()) {
                String what = what(pointer);
                if (cited.contains(pointer)) {
                    if (!tells) System.out.println("SILENT " + known + " " + pointer + " cites " + cited);
                    Statistics.label("cited").collect(what + " " + tells);
                } else {
                    Statistics.label("uncited").collect(what);
                }
            }
        }
    }

    private static String what(String pointer) {
        String first = pointer.substring(1, pointer.indexOf('/', 1));
        for (String part : List.of("mutation", "order", "shows", "absent", "otherwise")) {
            if (pointer.contains("/" + part)) {
                return part;
            }
        }
        return first;
    }

    /** The kits of two parents, as the reference lists them; what they may be is listed once, unless that is changed. */
    private static final class Kits {
        private final Known known;
        Map<Animal, Object> each = new LinkedHashMap<>();

        Kits(Known known) {
            this.known = known;
        }

        /** The looks of the kits that are counted; empty if none are, or masks contradict each other so that it is no model. */
        Optional<Map<Object, Probability>> answer(Genome genome) {
            Map<Animal, Probability> counted = new LinkedHashMap<>();
            Probability fertile = Probability.ZERO;
            Map<Animal, Probability> dams = known.animals(Sex.FEMALE);
            for (Map.Entry<Animal, Probability> sire : known.animals(Sex.MALE).entrySet()) {
                for (Map.Entry<Animal, Probability> dam : dams.entrySet()) {
                    Map<Animal, Probability> lives = new LinkedHashMap<>();
                    Probability all = Probability.ZERO;
                    for (Map.Entry<Animal, Probability> kit : new Mating(genome, sire.getKey(), dam.getKey()).conceived().entrySet()) {
                        Probability share = kit.getValue()
                                .times(Mating.viability(
                                        genome, kit.getKey(), known.looking().view().census().word()));
                        lives.merge(kit.getKey(), share, Probability::plus);
                        all = all.plus(share);
                    }
                    if (!all.isZero()) {
                        Probability pair = sire.getValue().times(dam.getValue());
                        fertile = fertile.plus(pair);
                        Probability whole = all;
                        lives.forEach((kit, share) -> counted.merge(
                                kit, share.times(pair).dividedBy(whole), Probability::plus));
                    }
                }
            }
            Map<Object, Probability> looks = new LinkedHashMap<>();
            each = new LinkedHashMap<>();
            for (Map.Entry<Animal, Probability> kit : counted.entrySet()) {
                if (!kit.getValue().isZero()) {
                    Probability chance = kit.getValue().dividedBy(fertile);
                    try {
                        var l = Life.looks(genome, kit.getKey(), known.looking().stage(), known.looking().traits());
                        each.put(kit.getKey(), l);
                        l
                                .forEach((look, share) -> looks.merge(look, share.times(chance), Probability::plus));
                    } catch (IllegalStateException conflict) {
                        return Optional.empty();
                    }
                }
            }
            return looks.isEmpty() ? Optional.empty() : Optional.of(looks);
        }
    }
}
