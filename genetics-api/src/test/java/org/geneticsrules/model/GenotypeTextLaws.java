package org.geneticsrules.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.testing.Once;
import org.geneticsrules.testing.RandomModels;

/** Laws of genotype text over random models. */
@Once
class GenotypeTextLaws {

    @Provide
    Arbitrary<Model> models() {
        return RandomModels.models();
    }

    static void textReadsBack(Model model, Genotype genotype) {
        assertEquals(genotype, Genotype.parse(model, genotype.toString()));
        Genotype part = genotype.restrictedTo(
                genotype.loci().stream().limit(1).collect(Collectors.toCollection(LinkedHashSet::new)));
        assertEquals(part, Genotype.parse(model, part.toString()));
    }

    /** Parts in any order, alleles in either order, any spelling, either separator: one canonical text. */
    static void printingIsIdempotent(Model model, Genotype genotype, Random random) {
        List<String> parts = new ArrayList<>();
        for (AllelePair pair : genotype.pairs().values()) {
            String one = anySpelling(pair.alleles().get(0), random);
            String other = anySpelling(pair.alleles().get(1), random);
            String before = model.symbols().prefix(pair.locus());
            parts.add(before + (random.nextBoolean() ? one + "/" + other : other + "/" + one));
        }
        Collections.shuffle(parts, random);
        String text = String.join(random.nextBoolean() ? " ; " : " ", parts);
        GenotypeText form = GenotypeText.of(model);
        String printed =
                form.print(form.parse(text, OmittedLoci.UNKNOWN).genotypes()).orElse("");
        assertEquals(form.print(genotype), Genotype.parse(model, text).toString());
        assertEquals(
                printed,
                form.print(form.parse(printed, OmittedLoci.UNKNOWN).genotypes()).orElse(""));
    }

    private static String anySpelling(Allele allele, Random random) {
        List<String> spellings = allele.spellings();
        return spellings.get(random.nextInt(spellings.size()));
    }

    /** Written together, a pair is read as itself, or refused because there are several readings; never as another pair. */
    static void whatIsWrittenTogetherIsNeverMisread(Model model, AllelePair pair) {
        String text = pair.toString().replace("/", "");
        try {
            assertEquals(pair.toString(), Genotype.parse(model, text).toString());
        } catch (ProblemsException refused) {
            Set<String> codes = new LinkedHashSet<>();
            refused.problems().forEach(problem -> codes.add(problem.code()));
            assertTrue(Set.of("ambiguous-genotype", "ambiguous-locus").containsAll(codes), refused.getMessage());
        }
    }

    static void anUnknownAlleleIsTheSetOfItsPairs(Model model, AllelePair pair) {
        GenotypeText form = GenotypeText.of(model);
        Locus locus = model.locus(pair.locus());
        String text = model.symbols().prefix(locus.id()) + pair.alleles().get(0).symbol() + "/-";
        GenotypeSet set = form.parse(text, OmittedLoci.UNKNOWN).genotypes();
        for (AllelePair each : locus.pairs()) {
            assertEquals(
                    each.has(pair.alleles().get(0).id()), set.pairs(locus.id()).contains(each));
        }
        String printed = form.print(set).orElseThrow();
        assertEquals(set, form.parse(printed, OmittedLoci.UNKNOWN).genotypes());
    }

    static void theLocusIsPrintedOnlyWhereNeeded(Model model, AllelePair pair) {
        String bare =
                pair.alleles().get(0).symbol() + "/" + pair.alleles().get(1).symbol();
        List<String> candidates = new ArrayList<>();
        for (Locus locus : model.loci().values()) {
            Set<String> spellings = new LinkedHashSet<>();
            locus.alleles().values().forEach(allele -> spellings.addAll(allele.spellings()));
            if (spellings.contains(pair.alleles().get(0).symbol())
                    && spellings.contains(pair.alleles().get(1).symbol())) {
                candidates.add(locus.id());
            }
        }
        assertTrue(candidates.contains(pair.locus()));
        String prefix = candidates.size() == 1 ? "" : model.locus(pair.locus()).symbol() + ":";
        assertEquals(prefix + bare, pair.toString());
    }

    /** Print depends on the set alone, not on the boxes it happens to be made of. */
    static void aSetPrintsAlikeHoweverItWasMade(Model model, Genotype genotype) {
        GenotypeText form = GenotypeText.of(model);
        GenotypeSet built = GenotypeSet.all(model);
        for (AllelePair pair : genotype.pairs().values()) {
            Locus locus = model.locus(pair.locus());
            GenotypeSet having = built.minus(built);
            for (AllelePair each : locus.pairs()) {
                if (each.has(pair.alleles().get(0).id())) {
                    having = having.or(built.where(locus.id(), List.of(each)));
                }
            }
            built = having;
        }
        Optional<String> printed = form.print(built);
        assertTrue(printed.isPresent());
        assertEquals(built, form.parse(printed.get(), OmittedLoci.UNKNOWN).genotypes());
    }

    @Property(tries = 300)
    void round_trip(@ForAll("models") Model model, @ForAll long seed) {
        Genotype genotype = RandomModels.genotype(model, seed);
        textReadsBack(model, genotype);
        printingIsIdempotent(model, genotype, new Random(seed));
    }

    @Property(tries = 300)
    void pairs(@ForAll("models") Model model, @ForAll long seed) {
        RandomModels.genotype(model, seed).pairs().values().forEach(pair -> {
            whatIsWrittenTogetherIsNeverMisread(model, pair);
            anUnknownAlleleIsTheSetOfItsPairs(model, pair);
            theLocusIsPrintedOnlyWhereNeeded(model, pair);
        });
    }

    @Property(tries = 300)
    void sets(@ForAll("models") Model model, @ForAll long seed) {
        aSetPrintsAlikeHoweverItWasMade(model, RandomModels.genotype(model, seed));
    }

    @Property(tries = 500)
    void any_text_is_read_or_refused_with_its_places(@ForAll("models") Model model, @ForAll("texts") String text) {
        try {
            GenotypeText.Parsed parsed = GenotypeText.of(model).parse(text, OmittedLoci.UNKNOWN);
            assertFalse(parsed.genotypes().isEmpty());
        } catch (ProblemsException refused) {
            refused.problems().forEach(problem -> {
                int column = problem.position().orElseThrow().column();
                assertTrue(column >= 1 && column <= text.length(), refused.getMessage());
            });
        }
    }

    @Provide
    Arbitrary<String> texts() {
        return Arbitraries.of(
                        "A1", "A2", "B1", "x0", "x1", "a^0", "A", "B", ":", "/", "|", "[", "]", " ", ";", "-", "_", "+",
                        "?", "Y", "k", "\u00e9", "\t")
                .list()
                .ofMaxSize(9)
                .map(pieces -> String.join("", pieces));
    }
}
