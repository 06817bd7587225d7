package org.geneticsrules.ferret;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.geneticsrules.explanation.CoatExplanation;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.render.HidingTable;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What hides what in each of the six models: the committed tables, the explanations and the rendered tables against substitution. */
@Tag("default-jdk")
class HidingTableTest {

    private static final LifeStage STAGE = LifeStage.atMoult(1).in("winter");

    /** A model with what substitution finds in it. */
    private record Subject(String name, CompiledModel compiled, Hiding hiding) {

        static Subject of(String name, Model model) {
            CompiledModel compiled = CompiledModel.of(model);
            return new Subject(name, compiled, new Hiding(compiled, STAGE));
        }

        Model model() {
            return compiled.model();
        }

        @Override
        public String toString() {
            return name;
        }
    }

    private static final List<Subject> SUBJECTS = Ferret.guided().entrySet().stream()
            .map(one -> Subject.of(one.getKey(), one.getValue()))
            .toList();

    private static final Subject DEFAULT = SUBJECTS.get(0);

    static Stream<Subject> subjects() {
        return SUBJECTS.stream();
    }

    /** Run with {@code -Dhiding.write=true} to write the tables anew, and read what has changed. */
    @ParameterizedTest
    @MethodSource("subjects")
    void the_committed_table_is_what_substitution_finds(Subject subject) throws IOException {
        Path file = Ferret.CHECKS.resolve("hiding").resolve(subject.name() + ".txt");
        if (Boolean.getBoolean("hiding.write")) {
            Files.writeString(file, subject.hiding().table());
        }
        assertEquals(Files.readString(file), subject.hiding().table());
    }

    @Test
    void every_committed_table_is_of_a_model() throws IOException {
        try (Stream<Path> files = Files.list(Ferret.CHECKS.resolve("hiding"))) {
            assertEquals(
                    SUBJECTS.stream().map(subject -> subject.name() + ".txt").collect(Collectors.toSet()),
                    files.map(file -> file.getFileName().toString()).collect(Collectors.toSet()));
        }
    }

    @Test
    void explanations_name_exactly_the_hidden_loci_of_a_coat() {
        explainsSome(DEFAULT, 60, List.of("C", "B", "R", "M"), "hue", "dilution", "eye colour", "white guard hairs");
    }

    @Test
    void explanations_name_exactly_the_hidden_loci_of_pattern_and_marks() {
        explainsSome(DEFAULT, 30, List.of("C", "M", "P", "D1", "D2"), "trunk suppression", "trunk depth");
        explainsSome(DEFAULT, 15, List.of("C", "M", "W"), "throat");
        explainsSome(DEFAULT, 15, List.of("C", "M", "P", "H"), "head white", "mask");
    }

    @ParameterizedTest
    @MethodSource("subjects")
    void explanations_name_exactly_the_hidden_loci_of_what_sets_a_model_apart(Subject subject) {
        List<String> traits = Stream.of("eye colour", "dilution", "hue", "trunk suppression", "trunk depth")
                .filter(subject.model().visibleTraits()::contains)
                .toList();
        for (String trait : traits) {
            explainsSome(subject, 12, List.copyOf(subject.compiled().lociRead(List.of(trait))), trait);
        }
        assertFalse(traits.isEmpty());
    }

    /** Genotypes drawn from all those of the loci that the traits depend on. */
    private static void explainsSome(Subject subject, int count, List<String> loci, String... traits) {
        Random random = new Random(20_261_126);
        List<Genotype> all = Hiding.genotypes(
                subject.model(), loci.stream().map(subject.model()::locus).toList());
        explainsAll(
                subject.compiled(),
                random.ints(count, 0, all.size()).mapToObj(all::get).toList(),
                View.of(List.of(traits)).at(STAGE));
    }

    private static void explainsAll(CompiledModel compiled, List<Genotype> genotypes, View view) {
        Map<Genotype, Set<Phenotype>> looks = new LinkedHashMap<>();
        for (Genotype genotype : genotypes) {
            for (Map.Entry<CoatExplanation, ?> way : CoatExplanation.of(compiled, genotype, Sex.FEMALE, view)
                    .asMap()
                    .entrySet()) {
                Map<String, List<AllelePair>> explained = new LinkedHashMap<>();
                way.getKey().hidden().forEach(hidden -> explained.put(hidden.locus(), hidden.alternatives()));
                Map<String, List<AllelePair>> expected = new LinkedHashMap<>();
                for (String locus : genotype.loci()) {
                    List<AllelePair> alike = compiled.model().locus(locus).pairs().stream()
                            .filter(pair -> looks.computeIfAbsent(
                                            genotype.with(pair), other -> looks(compiled, other, view))
                                    .contains(way.getKey().phenotype()))
                            .toList();
                    if (alike.size() > 1) {
                        expected.put(locus, alike);
                    }
                }
                assertEquals(expected, explained, genotype::toString);
            }
        }
    }

    private static Set<Phenotype> looks(CompiledModel compiled, Genotype genotype, View view) {
        return compiled.express(genotype, Sex.FEMALE, view.stage(), view.traits())
                .map(Expressed::phenotype)
                .outcomes();
    }

    /**
     * Beside a pair that makes a mask active for certain, exactly the loci that the table names tell nothing, and those that bear on other
     * masks of the same trait; but a locus of a mask that lies over it still tells whether that one covers it.
     */
    @ParameterizedTest
    @MethodSource("subjects")
    void the_table_made_from_masks_is_borne_out_by_substitution(Subject subject) {
        Model model = subject.model();
        HidingTable table = HidingTable.of(model);
        for (HidingTable.Row row : table.rows()) {
            Locus locus = model.locus(row.locus());
            Allowed covers = model.masks().get(row.mask()).when().variables().get(locus.id());
            if (covers == null) {
                continue;
            }
            Set<String> mustHide = new LinkedHashSet<>(row.loci());
            model.masks().values().stream()
                    .filter(other ->
                            other.over().contains(row.mask()) && other.covers().containsKey(row.trait()))
                    .forEach(other -> mustHide.removeAll(other.when().names()));
            Set<String> mayHide = new LinkedHashSet<>(row.loci());
            table.rows().stream()
                    .filter(other -> other.trait().equals(row.trait()))
                    .forEach(other -> mayHide.add(other.locus()));
            for (AllelePair pair : locus.pairs()) {
                List<String> hidden = subject.hiding().hiddenBy(locus, pair).getOrDefault(row.trait(), List.of());
                if (covers.allows(locus.expression(pair, Sex.FEMALE))) {
                    assertTrue(hidden.containsAll(mustHide), () -> pair + " hides " + hidden + " by " + row);
                    assertTrue(mayHide.containsAll(hidden), () -> pair + " hides " + hidden + " by " + row);
                }
            }
        }
    }

    /** The masks that read a locus, by which the test above holds rows to substitution, and those that read a trait. */
    @Test
    void the_masks_are_these() {
        Map<String, List<List<String>>> masks = new LinkedHashMap<>();
        for (Subject subject : SUBJECTS) {
            List<String> byLocus = new ArrayList<>();
            List<String> byTrait = new ArrayList<>();
            for (Mask mask : subject.model().masks().values()) {
                boolean locus =
                        subject.model().loci().keySet().containsAll(mask.when().names());
                (locus ? byLocus : byTrait).add(mask.id());
            }
            masks.put(subject.name(), List.of(byLocus, byTrait));
        }
        List<String> traits = List.of("whitened", "white head");
        assertEquals(
                Map.of(
                        "common-practice", List.of(List.of("albino", "near-white", "point"), traits),
                        "molecular-only", List.of(List.of(), List.of()),
                        "tyr-and-mlph", List.of(List.of("albino"), List.of()),
                        "pedigree-data", List.of(List.of(), List.of()),
                        "pale-apart", List.of(List.of("albino", "near-white", "point"), traits),
                        "dark-eyed-white-is-marking", List.of(List.of("albino", "point", "extreme white"), traits),
                        "dark-eyed-white-is-old-silver", List.of(List.of("albino", "point"), traits),
                        "dark-eyed-white-is-pale-step",
                                List.of(List.of("albino", "near-white", "point"), List.of("white head")),
                        "dark-eyed-white-is-silver", List.of(List.of("albino", "point"), traits)),
                masks);
        assertFalse(DEFAULT.hiding()
                .hiddenBy(
                        DEFAULT.model().locus("M"),
                        DEFAULT.model().locus("M").pairs().get(2))
                .isEmpty());
    }
}
