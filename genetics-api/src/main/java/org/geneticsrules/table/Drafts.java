package org.geneticsrules.table;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
        final Map<Column, Said> said = new EnumMap<>(Column.class);
        final List<Candidate> candidates = new ArrayList<>();
        final List<Read<Observation>> observations = new ArrayList<>();
        final List<Read<CalledName>> names = new ArrayList<>();
        final List<Read<GenotypeTest>> tests = new ArrayList<>();
        final List<Read<HearingTest>> hearing = new ArrayList<>();

        Animal(String id, int row) {
            this.id = id;
            this.row = row;
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
    }

    /** By id, in the order of their first rows. */
    final Map<String, Animal> animals = new LinkedHashMap<>();

    /** By the id of the litter, of which no kit is recorded. */
    final Map<String, Animal> kitless = new LinkedHashMap<>();

    /** By id. */
    final Map<String, Family> families = new LinkedHashMap<>();
}
