package org.geneticsrules.pedigree;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Sex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Coefficients of inbreeding that are published, and what is told beside them. */
class KinshipTest {

    private static final Probability HALF = Probability.of(1, 2);
    private static final Set<String> TAGS = Set.of("published", "from memory", "calculated", "common practice");

    /** One row of the table. */
    record Row(String name, Probability expected, String tag, String source, Pedigree pedigree) {
        @Override
        public String toString() {
            return name;
        }
    }

    static List<Row> rows() throws IOException {
        try (InputStream in = KinshipTest.class.getResourceAsStream("inbreeding.txt")) {
            String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
            return text.lines()
                    .filter(line -> !line.startsWith("#"))
                    .map(line -> line.split(" \\| ", -1))
                    .map(cells ->
                            new Row(cells[0], Probability.parse(cells[1]), cells[2], cells[3], pedigree(cells[4])))
                    .toList();
        }
    }

    /** Reads {@code kit = dam x sire; ...}. */
    private static Pedigree pedigree(String text) {
        Set<String> ids = new LinkedHashSet<>();
        PedigreeBuilder builder = Pedigree.builder("published", "1");
        for (String line : text.split("; ", -1)) {
            String[] names = line.split(" [=x] ", -1);
            builder.add(Litter.of("litter of " + names[0], names[1], names[2], names[0]));
            ids.addAll(List.of(names));
        }
        ids.forEach(id -> builder.add(Individual.of(id)));
        return builder.build();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void the_coefficient_is_the_published_one(Row row) {
        assertEquals(row.expected, Kinship.of(row.pedigree).inbreeding("k"));
        assertEquals(row.expected.toDouble(), RegistryKinship.of(row.pedigree).inbreeding("k"), 1e-15);
        assertTrue(row.source.length() > 10 && TAGS.contains(row.tag), row::toString);
    }

    @Test
    void the_table_has_every_row() throws IOException {
        assertEquals(17, rows().size());
    }

    private static PedigreeBuilder sibs(Paternity sires) {
        return Pedigree.builder("sibs", "1")
                .add(Individual.of("f", Sex.FEMALE))
                .add(Individual.of("m", Sex.MALE))
                .add(Individual.of("n", Sex.MALE))
                .add(Individual.of("a"))
                .add(Individual.of("b"))
                .add(Litter.of("l", Optional.of("f"), sires, "a", "b"));
    }

    @Test
    void litter_mates_of_one_of_two_sires_are_full_sibs() {
        Paternity sires = Paternity.oneOf(Paternity.Candidate.of("m", HALF), Paternity.Candidate.of("n", HALF));
        assertEquals(Probability.of(1, 4), Kinship.of(sibs(sires).build()).between("a", "b"));
    }

    @Test
    void litter_mates_that_may_have_different_sires_are_full_or_half_sibs() {
        Paternity sires = Paternity.perKit(Paternity.Candidate.of("m", HALF), Paternity.Candidate.of("n", HALF));
        // Full sibs (1/4) and half sibs (1/8) as often.
        assertEquals(Probability.of(3, 16), Kinship.of(sibs(sires).build()).between("a", "b"));
    }

    @Test
    void litter_mates_of_an_unknown_sire_are_full_sibs() {
        Pedigree pedigree = sibs(Paternity.unknown()).build();
        assertEquals(Probability.of(1, 4), Kinship.of(pedigree).between("a", "b"));
        assertEquals(Probability.ZERO, Kinship.of(pedigree).inbreeding("a"));
        assertEquals(Map.of("f", HALF), Kinship.of(pedigree).founderShares("a"));
    }

    @Test
    void an_unrecorded_candidate_is_related_to_nobody() {
        Paternity sires =
                Paternity.oneOf(Paternity.Candidate.of("m", HALF), Paternity.Candidate.unrecorded("wild", HALF));
        Kinship kinship = Kinship.of(sibs(sires).build());
        assertEquals(Probability.of(1, 8), kinship.between("a", "m"));
        assertEquals(Probability.of(1, 4), kinship.between("a", "b"));
    }

    @Test
    void the_range_is_wide_where_an_older_male_is_recorded_and_closed_where_none_is() {
        PedigreeBuilder builder = Pedigree.builder("range", "1")
                .add(Individual.of("old", Sex.MALE).bornOn(LocalDate.of(2000, 1, 1)))
                .add(Individual.of("jill", Sex.FEMALE).bornOn(LocalDate.of(2001, 1, 1)))
                .add(Individual.of("kit").bornOn(LocalDate.of(2002, 1, 1)))
                .add(Litter.of("l", "jill", "old", "kit"));
        KinshipRange range = Kinship.of(builder.build()).range("jill", "old");
        assertEquals(Probability.ZERO, range.low());
        // Only he is older than she: at most he is her sire.
        assertEquals(0.25, range.high(), 1e-9);
    }

    @Test
    void completeness_tells_one_side_from_two() {
        Pedigree pedigree = Pedigree.builder("sides", "1")
                .add(Individual.of("gd"))
                .add(Individual.of("gs"))
                .add(Individual.of("d"))
                .add(Individual.of("k"))
                .add(Litter.of("1", "gd", "gs", "d"))
                .add(Litter.of("2", Optional.of("d"), Paternity.unknown(), "k"))
                .build();
        Completeness measured = Completeness.of(pedigree, "k", 2);
        assertEquals(List.of(HALF, HALF), measured.generations());
        assertEquals(1.0, measured.equivalentGenerations());
        assertEquals(Probability.ONE, measured.damSide());
        assertEquals(Probability.ZERO, measured.index());
        assertThrows(IllegalArgumentException.class, () -> Completeness.of(pedigree, "k", 61));
    }

    @Test
    void a_long_line_is_refused_exactly_and_answered_in_floating_point() {
        PedigreeBuilder builder = Pedigree.builder("line", "1")
                .add(Individual.of("f0", Sex.FEMALE))
                .add(Individual.of("m0", Sex.MALE));
        for (int i = 1; i <= 1000; i++) {
            builder.add(Individual.of("f" + i, Sex.FEMALE))
                    .add(Individual.of("m" + i, Sex.MALE))
                    .add(Litter.of("l" + i, "f" + (i - 1), "m" + (i - 1), "f" + i, "m" + i));
        }
        Pedigree pedigree = builder.build();
        TooLargeException refused =
                assertThrows(TooLargeException.class, () -> Kinship.of(pedigree).inbreeding("f1000"));
        assertTrue(refused.getMessage().contains("floating point"), refused::getMessage);
        assertEquals(1.0, RegistryKinship.of(pedigree).inbreeding("f1000"), 1e-9);
        assertThrows(TooLargeException.class, () -> Kinship.of(pedigree).range("f0", "m0"));
    }

    @Test
    void a_group_is_asked_about_once_each() {
        RegistryKinship kinship = RegistryKinship.of(sibs(Paternity.of("m")).build());
        assertThrows(IllegalArgumentException.class, () -> kinship.meanKinship(List.of()));
        assertThrows(IllegalArgumentException.class, () -> kinship.meanKinship(List.of("a", "a")));
        assertThrows(IllegalArgumentException.class, () -> kinship.between("a", "nobody"));
    }
}
