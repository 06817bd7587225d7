package org.geneticsrules.comparison;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomPedigrees;
import org.geneticsrules.testing.RandomPedigrees.RandomPedigree;
import org.geneticsrules.testing.RecordedKindred;
import org.geneticsrules.testing.brute.Genome;
import org.geneticsrules.testing.brute.Kindred;
import org.geneticsrules.testing.brute.Worlds;
import org.geneticsrules.trait.Phenotype;

/** What litters are worth under a model, held to the list of all ways in which a pedigree may have come about. */
@Once
class ModelComparisonLaws {

    /** More ways than these are not listed. */
    private static final long MOST = 60_000;

    @Provide
    Arbitrary<RandomPedigree> pedigrees() {
        return RandomPedigrees.pedigrees();
    }

    /** The product over litters, each given the earlier ones, is the chance of all records given those of founders. */
    @Property(tries = 60)
    void litters_multiply_to_the_whole(@ForAll("pedigrees") RandomPedigree random) {
        Statistics.collect(litters_multiply_to_the_whole_of(random));
        Statistics.coverage(coverage -> {
            coverage.check("fits").percentage(share -> share > 25);
            coverage.check("nothing shared").percentage(share -> share < 60);
        });
    }

    static String litters_multiply_to_the_whole_of(RandomPedigree random) {
        Kindred scored = RecordedKindred.scored(random.kindred());
        Optional<ComparedModels> compared = compared(random, RecordedKindred.pedigree(random.model(), scored));
        if (compared.isEmpty()) {
            return "nothing shared";
        }
        Kindred shared = shared(scored, compared.get().records());
        double found = compared.get().log(0);
        List<String> order =
                compared.get().litters().stream().map(LitterEvidence::litter).toList();
        double expected = 0;
        for (int t = 0; t < order.size(); t++) {
            Optional<Double> all = log(random.genome(), upTo(shared, order.subList(0, t + 1), false));
            Optional<Double> before = log(random.genome(), upTo(shared, order.subList(0, t + 1), true));
            if (all.isEmpty() || before.isEmpty()) {
                return "too many";
            }
            if (all.get() == Double.NEGATIVE_INFINITY) {
                assertEquals(Double.NEGATIVE_INFINITY, found);
                return "contradiction";
            }
            expected += all.get() - before.get();
        }
        assertEquals(expected, found, 1e-10 * Math.max(1, Math.abs(expected)), random.toString());
        double sum = compared.get().litters().stream()
                .mapToDouble(litter -> litter.logs().get(0))
                .sum();
        assertEquals(expected, sum, 1e-10 * Math.max(1, Math.abs(expected)));
        return "fits";
    }

    /** A litter that is recorded because one kit at least shows something is one of those in which not all show something else. */
    @Property(tries = 60)
    void notice_leaves_out_litters_without_a_sign(@ForAll("pedigrees") RandomPedigree random) {
        Statistics.collect(notice_leaves_out_litters_without_a_sign_of(random));
        Statistics.coverage(coverage -> coverage.check("noticed").percentage(share -> share > 5));
    }

    static String notice_leaves_out_litters_without_a_sign_of(RandomPedigree random) {
        Kindred scored = RecordedKindred.scored(random.kindred());
        // the one litter of a kindred, without what came after it
        Kindred.Litter litter = scored.litters().get(0);
        Kindred first = new Kindred(
                scored.members().stream()
                        .filter(one -> litter.kits().contains(one.id())
                                || scored.litterOf(one.id()).isEmpty())
                        .toList(),
                List.of(litter),
                scored.confusions());
        Optional<Kindred.Sighting> sign = litter.kits().stream()
                .flatMap(kit -> first.member(kit).sightings().stream())
                .filter(seen -> seen.looks().size() == 1)
                .findFirst();
        if (sign.isEmpty()) {
            return "no sign";
        }
        Pedigree plain = RecordedKindred.pedigree(random.model(), first);
        Phenotype look = Phenotype.from(sign.get().looks().get(0));
        Optional<ComparedModels> complete = compared(random, plain);
        if (complete.isEmpty() || !complete.get().records().traits().containsAll(look.traits())) {
            return "nothing shared";
        }
        PedigreeBuilder builder = Pedigree.builder("noticed", "1");
        plain.individuals().values().forEach(builder::add);
        var stage = plain
                .individual(litter.kits().stream()
                        .filter(kit -> first.member(kit).sightings().contains(sign.get()))
                        .findFirst()
                        .orElseThrow())
                .observations()
                .stream()
                .filter(seen -> seen.looks().equals(Set.of(look)))
                .findFirst()
                .orElseThrow()
                .stage();
        Litter noticed = plain.litters()
                .get(litter.id())
                .with(new Ascertainment.AtLeastOne(new org.geneticsrules.trait.Sighting(stage, look)));
        Optional<ComparedModels> compared =
                compared(random, builder.add(noticed).build());
        Kindred shared = shared(first, compared.orElseThrow().records());
        Optional<Double> born = log(random.genome(), upTo(shared, List.of(litter.id()), true));
        Optional<Double> all = log(random.genome(), shared);
        Optional<Double> none = log(random.genome(), without(shared, litter, sign.get(), random.model()));
        if (born.isEmpty() || all.isEmpty() || none.isEmpty()) {
            return "too many";
        }
        if (all.get() == Double.NEGATIVE_INFINITY) {
            assertTrue(compared.get().impossible(0));
            return "contradiction";
        }
        double noticing = born.get() + Math.log(-Math.expm1(none.get() - born.get()));
        assertEquals(all.get() - noticing, compared.get().log(0), 1e-8 * Math.max(1, Math.abs(all.get())));
        return "noticed";
    }

    /** All kits of a litter showing anything but the sign. */
    private static Kindred without(Kindred kindred, Kindred.Litter litter, Kindred.Sighting sign, Model model) {
        List<Map<String, String>> others = new ArrayList<>(List.of(new LinkedHashMap<>()));
        for (String trait : sign.looks().get(0).keySet()) {
            List<Map<String, String>> longer = new ArrayList<>();
            for (Map<String, String> other : others) {
                for (String state : model.catalogue().traits().get(trait).states()) {
                    Map<String, String> more = new LinkedHashMap<>(other);
                    more.put(trait, state);
                    longer.add(more);
                }
            }
            others = longer;
        }
        others.remove(sign.looks().get(0));
        if (others.isEmpty()) {
            // a trait of one state: every kit shows it
            others = List.of(sign.looks().get(0));
        }
        Kindred.Sighting other = new Kindred.Sighting(sign.stage(), others);
        return new Kindred(
                kindred.members().stream()
                        .map(one -> litter.kits().contains(one.id())
                                ? new Kindred.Member(one.id(), "", one.population(), List.of(other), List.of())
                                : one)
                        .toList(),
                kindred.litters(),
                kindred.confusions());
    }

    private static Optional<ComparedModels> compared(RandomPedigree random, Pedigree pedigree) {
        try {
            return Optional.of(ModelComparison.of(List.of(Candidate.of(random.model())), pedigree)
                    .with(RecordedKindred.confusions(random.kindred()))
                    .from(random.model().populations().keySet().iterator().next())
                    .compare());
        } catch (ProblemsException e) {
            assertTrue(e.getMessage().contains("nothing-shared"), e.getMessage());
            return Optional.empty();
        }
    }

    /** The records of which the model speaks whatever the animal, without animals that no litter connects with others. */
    private static Kindred shared(Kindred kindred, SharedRecords records) {
        Set<String> left = new LinkedHashSet<>();
        records.dropped().forEach(one -> left.add(one.id()));
        List<Kindred.Member> members = new ArrayList<>();
        for (Kindred.Member one : kindred.members()) {
            if (kindred.litterOf(one.id()).isEmpty()
                    && kindred.litters().stream()
                            .noneMatch(litter -> litter.dam().equals(one.id())
                                    || litter.sires().stream()
                                            .anyMatch(sire -> sire.id().equals(one.id())))) {
                continue;
            }
            List<Kindred.Sighting> seen = new ArrayList<>();
            for (Kindred.Sighting sighting : one.sightings()) {
                List<Map<String, String>> looks = new ArrayList<>();
                for (Map<String, String> look : sighting.looks()) {
                    Map<String, String> kept = new LinkedHashMap<>(look);
                    kept.keySet().removeAll(left);
                    if (!kept.isEmpty() && !looks.contains(kept)) {
                        looks.add(kept);
                    }
                }
                if (!looks.isEmpty()) {
                    seen.add(new Kindred.Sighting(sighting.stage(), looks));
                }
            }
            members.add(new Kindred.Member(one.id(), one.sex(), one.population(), seen, one.tests()));
        }
        return new Kindred(members, kindred.litters(), kindred.confusions());
    }

    /** Founders and some litters, of the last of which perhaps nothing is recorded; parents have the sex that parents have. */
    private static Kindred upTo(Kindred kindred, List<String> litters, boolean blank) {
        List<Kindred.Member> members = new ArrayList<>();
        for (Kindred.Member one : kindred.members()) {
            String litter = kindred.litterOf(one.id()).map(Kindred.Litter::id).orElse("");
            if (!litter.isEmpty() && !litters.contains(litter)) {
                continue;
            }
            members.add(
                    blank && litter.equals(litters.get(litters.size() - 1))
                            ? new Kindred.Member(one.id(), "", one.population(), List.of(), List.of())
                            : new Kindred.Member(
                                    one.id(), kindred.sex(one.id()), one.population(), one.sightings(), one.tests()));
        }
        return new Kindred(
                members,
                kindred.litters().stream()
                        .filter(litter -> litters.contains(litter.id()))
                        .toList(),
                kindred.confusions());
    }

    private static Optional<Double> log(Genome genome, Kindred kindred) {
        return Worlds.within(genome, kindred, MOST)
                .map(worlds -> Math.log(worlds.likelihood().toDouble()));
    }
}
