package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/** Laws of genotypes, their phase, their text and sets of them, where loci are linked and sexes differ. */
class LinkedGenotypeLaws {

    @Provide
    Arbitrary<Model> models() {
        return LinkedModels.models();
    }

    private static Set<String> written(Genotype genotype) {
        Set<String> loci = new LinkedHashSet<>(genotype.loci());
        loci.removeIf(locus -> genotype.pair(locus).orElseThrow().alleles().isEmpty());
        return loci;
    }

    /** What is not written is a missing chromosome, and it is found again if a written locus tells the sex. */
    static void textReadsBack(Model model, Genotype genotype) {
        Genotype read = Genotype.parse(model, genotype.toString());
        Genotype shown = genotype.restrictedTo(written(genotype));
        assertEquals(shown.sexes().size() == 1 ? genotype : shown, read);
        assertEquals(genotype.toString(), read.toString());
    }

    static void aPartReadsBack(Model model, Genotype genotype, Random random) {
        List<String> loci = new ArrayList<>(genotype.loci());
        Collections.shuffle(loci, random);
        Genotype part = genotype.restrictedTo(loci.subList(0, random.nextInt(loci.size() + 1)));
        Genotype read = Genotype.parse(model, part.toString());
        assertEquals(part.restrictedTo(written(part)), read.restrictedTo(written(part)));
        assertEquals(part.phase(), read.phase());
    }

    /** A group in brackets with homozygous loci and in any order, strands in either order: one canonical text. */
    static void bracketsReadInAnyOrder(Model model, Genotype genotype, Random random) {
        for (LinkageGroup group : model.groups().values()) {
            List<String> loci = new ArrayList<>(group.loci());
            loci.removeIf(locus -> {
                AllelePair pair = genotype.pair(locus).orElseThrow();
                return pair.alleles().size() != 2
                        || (pair.isHeterozygous() && genotype.phase().at(locus).isEmpty());
            });
            if (loci.isEmpty()) {
                continue;
            }
            Collections.shuffle(loci, random);
            List<String> one = new ArrayList<>();
            List<String> other = new ArrayList<>();
            for (String locus : loci) {
                AllelePair pair = genotype.pair(locus).orElseThrow();
                Phase.Strands strands = genotype.phase()
                        .at(locus)
                        .orElse(new Phase.Strands(
                                pair.alleles().get(0), pair.alleles().get(1)));
                String prefix = model.symbols().prefix(locus);
                boolean first = random.nextBoolean();
                one.add((first ? prefix : "") + strands.one().symbol());
                other.add((first && random.nextBoolean() ? "" : prefix)
                        + strands.other().id());
            }
            boolean swapped = random.nextBoolean();
            String text = "[" + String.join(" ", swapped ? other : one) + "]/["
                    + String.join(" ", swapped ? one : other) + "]";
            Genotype read = Genotype.parse(model, text);
            assertEquals(genotype.restrictedTo(loci), read.restrictedTo(loci), text);
        }
    }

    static void aGenotypeIsOneOfItsSet(Model model, Genotype genotype) {
        GenotypeSet set = GenotypeSet.of(model, genotype);
        assertTrue(set.contains(genotype));
        assertEquals(genotype.sexes(), model.distinguishesSex() ? set.sexes() : genotype.sexes());
        assertEquals(
                BigInteger.valueOf(model.distinguishesSex() ? genotype.sexes().size() : 1), set.size());
        for (Sex sex : Sex.values()) {
            assertEquals(genotype.sexes().contains(sex), set.contains(genotype, sex));
            assertEquals(genotype.sexes().contains(sex), GenotypeSet.all(model).contains(genotype, sex));
        }
    }

    /** The text of a set reads back as the set, and the sets that a text of known alleles makes have one. */
    static void setsReadBack(Model model, Genotype genotype, Random random) {
        GenotypeText text = GenotypeText.of(model);
        GenotypeSet set = GenotypeSet.all(model);
        for (AllelePair pair : genotype.pairs().values()) {
            Locus locus = model.locus(pair.locus());
            List<Allele> alleles = pair.alleles();
            switch (random.nextInt(3)) {
                case 0 -> set = set.where(locus.id(), List.of(pair));
                case 1 ->
                    set = alleles.isEmpty()
                            ? set
                            : set.where(
                                    locus.id(),
                                    GenotypeText.having(locus, alleles.get(0).id()));
                default -> assertTrue(set.pairs(locus.id()).contains(pair));
            }
        }
        Optional<String> printed = text.print(set);
        if (printed.isPresent()) {
            assertEquals(set, text.parse(printed.get(), OmittedLoci.UNKNOWN).genotypes());
        } else {
            // Only the sex of an animal can be known without a notation for it.
            assertEquals(1, set.sexes().size());
        }
    }

    static void setsAreMadeOfTheirSexes(Model model, GenotypeSet set) {
        GenotypeSet females = set.of(Sex.FEMALE);
        GenotypeSet males = set.of(Sex.MALE);
        assertEquals(set, females.or(males));
        if (model.distinguishesSex()) {
            assertTrue(females.and(males).isEmpty());
            assertEquals(set.size(), females.size().add(males.size()));
        }
        for (GenotypeSet.Box box : set.sexedBoxes()) {
            for (Sex sex : box.sexes()) {
                box.pairs().forEach((locus, pairs) -> {
                    assertFalse(pairs.isEmpty());
                    assertTrue(model.locus(locus).pairs(sex).containsAll(pairs));
                });
            }
        }
    }

    /** Every genotype of either sex lies in the boxes exactly once. */
    static void boxesAreDisjoint(Model model, GenotypeSet set, Genotype genotype) {
        for (Sex sex : genotype.sexes()) {
            long boxes = set.sexedBoxes().stream()
                    .filter(box -> box.sexes().contains(sex))
                    .filter(box -> genotype.pairs().values().stream()
                            .allMatch(pair -> box.at(pair.locus()).contains(pair)))
                    .count();
            assertEquals(set.contains(genotype, sex) ? 1 : 0, boxes);
        }
    }

    static void whatShowsIsWhatTheSexShows(Model model, Genotype genotype, Random random) {
        Locus locus = model.locus(new ArrayList<>(genotype.loci())
                .get(random.nextInt(genotype.loci().size())));
        String expression =
                locus.expressions().get(random.nextInt(locus.expressions().size()));
        GenotypeSet showing = GenotypeSet.all(model).showing(Condition.where(locus.id(), expression));
        for (Sex sex : genotype.sexes()) {
            boolean shows = locus.expression(genotype.pair(locus.id()).orElseThrow(), sex)
                    .equals(expression);
            assertEquals(shows, showing.contains(genotype, sex));
        }
    }

    static void phaseIsCanonical(Model model, Genotype genotype) {
        Map<String, Phase.Strands> swapped = new LinkedHashMap<>();
        genotype.phase()
                .strands()
                .forEach((locus, strands) -> swapped.put(locus, new Phase.Strands(strands.other(), strands.one())));
        assertEquals(genotype.phase(), Phase.of(model, swapped));
        assertEquals(genotype.phase(), Phase.of(model, genotype.phase().strands()));
        for (LinkageGroup group : model.groups().values()) {
            List<String> known = group.loci().stream()
                    .filter(locus -> genotype.phase().at(locus).isPresent())
                    .toList();
            assertFalse(known.size() == 1);
            if (!known.isEmpty()) {
                AllelePair first = genotype.pair(known.get(0)).orElseThrow();
                Phase.Strands strands = genotype.phase().at(known.get(0)).orElseThrow();
                assertEquals(List.of(strands.one(), strands.other()), first.alleles());
            }
        }
    }

    /** Restricting twice is restricting to what is common, and alleles stay on the same strands relative to one another. */
    static void phaseIsRestricted(Model model, Genotype genotype, Random random) {
        Phase phase = genotype.phase();
        List<String> loci = new ArrayList<>(genotype.loci());
        Collections.shuffle(loci, random);
        Set<String> some = new LinkedHashSet<>(loci.subList(0, random.nextInt(loci.size() + 1)));
        Set<String> others = new LinkedHashSet<>(loci.subList(random.nextInt(loci.size() + 1), loci.size()));
        Set<String> common = new LinkedHashSet<>(some);
        common.retainAll(others);
        Phase restricted = phase.restrictedTo(model, some);
        assertEquals(phase.restrictedTo(model, common), restricted.restrictedTo(model, others));
        assertEquals(phase, phase.restrictedTo(model, loci));
        assertEquals(Phase.unknown(), phase.restrictedTo(model, List.of()));
        for (LinkageGroup group : model.groups().values()) {
            List<String> kept = group.loci().stream()
                    .filter(locus -> restricted.at(locus).isPresent())
                    .toList();
            for (String locus : kept) {
                boolean before = phase.at(locus)
                        .orElseThrow()
                        .equals(restricted.at(locus).orElseThrow());
                boolean beforeFirst = phase.at(kept.get(0))
                        .orElseThrow()
                        .equals(restricted.at(kept.get(0)).orElseThrow());
                assertEquals(beforeFirst, before);
            }
        }
    }

    @Property(tries = 500)
    void text(@ForAll("models") Model model, @ForAll long seed) {
        Genotype genotype = LinkedModels.genotype(model, seed);
        textReadsBack(model, genotype);
        aPartReadsBack(model, genotype, new Random(seed));
        bracketsReadInAnyOrder(model, genotype, new Random(seed));
    }

    @Property(tries = 300)
    void sets(@ForAll("models") Model model, @ForAll long seed) {
        Genotype genotype = LinkedModels.genotype(model, seed);
        aGenotypeIsOneOfItsSet(model, genotype);
        setsReadBack(model, genotype, new Random(seed));
        GenotypeSet one = GenotypeSet.of(
                model, genotype.restrictedTo(genotype.loci().stream().limit(2).toList()));
        GenotypeSet other = GenotypeSet.of(
                model,
                LinkedModels.genotype(model, seed + 1)
                        .restrictedTo(genotype.loci().stream().skip(1).limit(2).toList()));
        for (GenotypeSet set : List.of(
                GenotypeSet.all(model),
                one,
                one.or(other),
                one.and(other),
                GenotypeSet.all(model).minus(one))) {
            setsAreMadeOfTheirSexes(model, set);
            boxesAreDisjoint(model, set, genotype);
            boxesAreDisjoint(model, set, LinkedModels.genotype(model, seed + 2));
        }
        whatShowsIsWhatTheSexShows(model, genotype, new Random(seed));
    }

    @Property(tries = 500)
    void phase(@ForAll("models") Model model, @ForAll long seed) {
        Genotype genotype = LinkedModels.genotype(model, seed);
        phaseIsCanonical(model, genotype);
        phaseIsRestricted(model, genotype, new Random(seed));
    }
}
