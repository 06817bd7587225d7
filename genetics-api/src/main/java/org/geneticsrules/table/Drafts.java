package org.geneticsrules.table;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.GenotypeTest;
import org.geneticsrules.pedigree.HearingTest;
import org.geneticsrules.pedigree.Observation;
import org.geneticsrules.probability.Probability;

/** What the rows of a table have said so far, and where. */
final class Drafts {

    /** What stands in one cell: its text and its row. */
    record Said(String text, int row) {}

    /** A candidate sire; one of the two names is empty, or both. */
    record Candidate(String male, String population, Probability share, int row) {
        boolean sameAs(Candidate other) {
            return male.equals(other.male) && population.equals(other.population) && share.equals(other.share);
        }
    }

    /** A record with the row and the column from which it was read. */
    record Read<T>(T value, int row, int column) {}

    /** The rows of one individual, or those of a litter without a recorded kit. */
    static final class Animal {
        final String id;
        final int row;
        final Map<Column, Said> said;
        final List<Candidate> candidates;
        final List<Read<Observation>> observations;
        final List<Read<CalledName>> names;
        final List<Read<GenotypeTest>> tests;
        final List<Read<HearingTest>> hearing;

        /** The first kit of the same counted row, if this is a further one. */
        final Optional<Animal> like;

        Animal(String id, int row) {
            this.id = id;
            this.row = row;
            said = new EnumMap<>(Column.class);
            candidates = new ArrayList<>();
            observations = new ArrayList<>();
            names = new ArrayList<>();
            tests = new ArrayList<>();
            hearing = new ArrayList<>();
            like = Optional.empty();
        }

        /** One more kit that a row counts, which says the same of all. */
        Animal(String id, Animal first) {
            this.id = id;
            row = first.row;
            said = first.said;
            candidates = first.candidates;
            observations = first.observations;
            names = first.names;
            tests = first.tests;
            hearing = first.hearing;
            like = Optional.of(first);
        }

        String text(Column column) {
            Said there = said.get(column);
            return there == null ? "" : there.text;
        }
    }

    /** What the rows of its kits say of one litter. */
    static final class Family {
        final int row;
        final Map<Column, Said> said = new EnumMap<>(Column.class);
        final List<Candidate> candidates = new ArrayList<>();
        final List<Animal> kits = new ArrayList<>();

        Family(int row) {
            this.row = row;
        }

        String text(Column column) {
            Said there = said.get(column);
            return there == null ? "" : there.text;
        }

        /** The row that said it, or the first if none did. */
        int row(Column column) {
            Said there = said.get(column);
            return there == null ? row : there.row;
        }
    }

    /** By id, in the order of their first rows. */
    final Map<String, Animal> animals = new LinkedHashMap<>();

    /** By the id of the litter, of which no kit is recorded. */
    final Map<String, Animal> kitless = new LinkedHashMap<>();

    /** Rows that count no kit; they speak of a litter alone. */
    final List<Animal> none = new ArrayList<>();

    /** By id. */
    final Map<String, Family> families = new LinkedHashMap<>();
}
