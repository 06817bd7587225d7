package org.geneticsrules.cross;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.cross.RandomMatings.Family;
import org.geneticsrules.cross.RandomMatings.Known;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.explanation.ParentsCase;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.View;
import org.geneticsrules.expression.WeightedBox;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.brute.Life;
import org.geneticsrules.testing.brute.Litters;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/** Reasons in models of the whole language: what is found backward from a look adds up to what is found forward from the parents. */
@Once
class WholeReasonsLaws {

    @Provide
    Arbitrary<Long> seeds() {
        return Arbitraries.longs();
    }

    @Property(tries = 60)
    void ways_of_known_parents_add_up(@ForAll("seeds") long seed) {
        waysAddUp(Known.draw(seed));
    }

    @Property(tries = 30)
    void ways_of_uncertain_parents_add_up(@ForAll("seeds") long seed) {
        waysAddUp(Family.draw(seed));
    }

    @Property(tries = 30)
    void ways_of_two_males_add_up(@ForAll("seeds") long seed) {
        waysAddUp(Family.ofTwoMales(seed, seed % 2 == 0));
    }

    @Property(tries = 30)
    void what_a_look_hides_is_what_kits_of_that_look_carry(@ForAll("seeds") long seed) {
        hiddenIsConditional(Known.draw(seed));
    }

    @Property(tries = 30)
    void boxes_behind_a_look_weigh_as_much_as_the_look(@ForAll("seeds") long seed) {
        boxesAddUp(Known.draw(seed));
    }

    static void waysAddUp(Known known) {
        View view = known.looking().view();
        if (known.hasKits(view.census())) {
            addUp(known.cross().phenotypes(view), known.cross().explain(view), known);
        }
    }

    static void waysAddUp(Family family) {
        View view = family.looking().view();
        if (!family.isContradictory()) {
            Optional<Distribution<Phenotype>> probable = family.cross().probable(view);
            Optional<MatingExplanation> reasons = family.cross().explain(view);
            assertEquals(probable.isPresent(), reasons.isPresent(), family::toString);
            probable.ifPresent(chances -> addUp(chances, reasons.orElseThrow(), family));
        }
    }

    private static void addUp(Distribution<Phenotype> chances, MatingExplanation reasons, Object asked) {
        Map<Phenotype, Probability> sums = new LinkedHashMap<>();
        for (Way way : reasons.ways()) {
            ParentsCase parents = reasons.cases().get(way.parents());
            Probability product = parents.probability();
            for (Probability factor : way.factors().values()) {
                product = product.times(factor);
            }
            assertEquals(product.dividedBy(parents.counted()), way.probability(), asked::toString);
            sums.merge(way.phenotype(), way.probability(), Probability::plus);
        }
        assertEquals(chances.asMap(), sums, asked::toString);
        Probability all = Probability.ZERO;
        for (ParentsCase parents : reasons.cases()) {
            all = all.plus(parents.probability());
        }
        assertEquals(Probability.ONE, all, asked::toString);
    }

    static void hiddenIsConditional(Known known) {
        View view = known.looking().view();
        if (!known.hasKits(view.census())) {
            return;
        }
        Map<Litters.Kit, Probability> kits = known.litters(view.census())
                .next(known.looking().stage(), known.looking().traits());
        for (Hidden hidden : known.cross().explain(view).hidden()) {
            Map<String, Probability> carried = new LinkedHashMap<>();
            Probability sum = Probability.ZERO;
            for (Map.Entry<Litters.Kit, Probability> kit : kits.entrySet()) {
                Map<String, String> look = new LinkedHashMap<>(kit.getKey().look());
                look.put(Sex.VARIABLE, kit.getKey().sex());
                if (Phenotype.from(look).equals(hidden.phenotype())) {
                    carried.merge(kit.getKey().genotype().get(hidden.locus()), kit.getValue(), Probability::plus);
                    sum = sum.plus(kit.getValue());
                }
            }
            Probability whole = sum;
            carried.replaceAll((pair, chance) -> chance.dividedBy(whole));
            Map<String, Probability> found = new LinkedHashMap<>();
            hidden.chances()
                    .orElseThrow()
                    .asMap()
                    .forEach((pair, chance) -> found.put(
                            String.join(
                                    "/",
                                    pair.alleles().stream()
                                            .map(allele -> allele.id())
                                            .toList()),
                            chance));
            assertEquals(carried, found, () -> known + " " + hidden);
        }
    }

    /** The chance that a kit shows nothing other than a look, by the boxes that may show it and by going through all kits. */
    static void boxesAddUp(Known known) {
        View view = known.looking().view();
        if (!known.hasKits(view.census())) {
            return;
        }
        Map<Litters.Kit, Probability> kits =
                known.litters(Census.CONCEIVED).next(known.looking().stage(), List.of());
        Distribution<Map<String, String>> looks = Distribution.of(known.litters(Census.CONCEIVED)
                .looks(known.looking().stage(), known.looking().traits()));
        for (Map<String, String> look : looks.outcomes()) {
            Probability backward = Probability.ZERO;
            List<WeightedBox> boxes =
                    known.compiled().evidence(List.of(new Sighting(view.stage(), Phenotype.from(look))));
            for (Map.Entry<Litters.Kit, Probability> kit : kits.entrySet()) {
                for (WeightedBox box : boxes) {
                    if (box.box().holds(name -> value(known, kit.getKey(), name))) {
                        backward = backward.plus(kit.getValue().times(box.weight()));
                    }
                }
            }
            Probability forward = looks.probabilityOf(shown -> look.keySet().stream()
                    .allMatch(trait -> look.get(trait).equals(shown.getOrDefault(trait, look.get(trait)))));
            assertEquals(forward, backward, () -> known + " " + look);
        }
    }

    private static String value(Known known, Litters.Kit kit, String name) {
        return name.equals(Sex.VARIABLE)
                ? kit.sex()
                : Life.expression(known.genome(), name, kit.genotype().get(name), kit.sex());
    }
}
