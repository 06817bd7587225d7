package org.geneticsrules.table;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Position;
import org.geneticsrules.problem.Problem;

/** Finds the cells that a problem is about. */
final class Places {

    private static final Map<String, Column> OF_INDIVIDUALS = Map.of(
            "sex", Column.SEX,
            "born", Column.BORN,
            "population", Column.POPULATION,
            "fertility", Column.FERTILITY);

    private static final Map<String, Column> OF_LITTERS = Map.of(
            "dam", Column.DAM,
            "sire", Column.SIRE,
            "born", Column.LITTER_BORN,
            "bornCount", Column.KITS_BORN,
            "scoredCount", Column.KITS_SCORED,
            "fosterDam", Column.FOSTER_DAM);

    private static final Map<String, Column> OF_NAMES = Map.of(
            "date", Column.SEEN_ON,
            "season", Column.SEASON,
            "light", Column.LIGHT,
            "vocabulary", Column.CALLED_IN,
            "facet", Column.FACET);

    private final Sheet sheet;
    private final Headers headers;
    private final Drafts drafts;

    Places(Sheet sheet, Headers headers, Drafts drafts) {
        this.sheet = sheet;
        this.headers = headers;
        this.drafts = drafts;
    }

    /** A place in the table: a row, and a column or none. */
    private record Cell(int row, int column) {}

    /** A problem of a cell, {@code /row/column}, with its position. */
    Problem ofCell(Problem problem) {
        List<String> names = Pointer.names(problem.pointer());
        if (names.isEmpty()) {
            return problem.at(new Position(1, 1));
        }
        int column = names.size() > 1 ? headers.find(names.get(1)) : 0;
        return problem.at(sheet.place(Integer.parseInt(names.get(0)), Math.max(0, column)));
    }

    /** Whether the same was said of another kit of the same counted row. */
    boolean repeats(Problem problem) {
        List<String> names = Pointer.names(problem.pointer());
        if (names.size() < 2) {
            return false;
        }
        Drafts.Animal animal = drafts.animals.get(names.get(1));
        Drafts.Family family = drafts.families.get(names.get(1));
        if (names.get(0).equals("litters")
                && family != null
                && names.size() > 3
                && names.get(2).equals("kits")) {
            animal = family.kits.get(Integer.parseInt(names.get(3)));
        } else if (!names.get(0).equals("individuals")) {
            return false;
        }
        return animal != null && animal.like.isPresent();
    }

    /** A problem of a record, {@code /individuals/..} or {@code /litters/..}, moved to its cell. */
    Problem ofRecord(Problem problem) {
        List<String> names = Pointer.names(problem.pointer());
        Cell cell = cell(names).orElse(new Cell(0, Headers.NONE));
        String pointer = Pointer.of(Integer.toString(cell.row))
                + headers.word(cell.column).map(Pointer::of).orElse("");
        return new Problem(
                        problem.stage(),
                        problem.code(),
                        names.isEmpty() ? "" : pointer,
                        problem.position(),
                        problem.message(),
                        problem.expected(),
                        problem.nearest())
                .at(names.isEmpty() ? new Position(1, 1) : sheet.place(cell.row, Math.max(0, cell.column)));
    }

    private Optional<Cell> cell(List<String> names) {
        if (names.size() < 2) {
            return Optional.empty();
        }
        String field = names.size() > 2 ? names.get(2) : "";
        if (names.get(0).equals("individuals")) {
            Drafts.Animal animal = drafts.animals.get(names.get(1));
            return Optional.ofNullable(animal).map(one -> cell(one, field, names));
        }
        Drafts.Family family = drafts.families.get(names.get(1));
        return Optional.ofNullable(family).map(one -> cell(one, field, names));
    }

    private Cell cell(Drafts.Animal animal, String field, List<String> names) {
        Column column = OF_INDIVIDUALS.get(field);
        if (column != null) {
            return said(animal.said, column, animal.row);
        }
        int number = names.size() > 3 ? Integer.parseInt(names.get(3)) : 0;
        String last = names.get(names.size() - 1);
        return switch (field) {
            case "observations" -> {
                Drafts.Read<?> read = animal.observations.get(number);
                yield last.equals("date")
                        ? new Cell(read.row(), headers.of(Column.SEEN_ON))
                        : last.equals("season")
                                ? new Cell(read.row(), headers.of(Column.SEASON))
                                : last.equals("light")
                                        ? new Cell(read.row(), headers.of(Column.LIGHT))
                                        : new Cell(read.row(), headers.traits.getOrDefault(last, read.column()));
            }
            case "names" -> {
                Drafts.Read<?> read = animal.names.get(number);
                Column at = OF_NAMES.getOrDefault(last, Column.CALLED);
                yield new Cell(read.row(), headers.of(at) == Headers.NONE ? read.column() : headers.of(at));
            }
            case "tests" -> {
                Drafts.Read<?> read = animal.tests.get(number);
                yield new Cell(read.row(), last.equals("date") ? headers.of(Column.TESTED_ON) : read.column());
            }
            case "hearing" -> new Cell(animal.hearing.get(number).row(), headers.of(Column.HEARING_TESTED_ON));
            default -> whole(animal);
        };
    }

    private Cell cell(Drafts.Family family, String field, List<String> names) {
        Column column = OF_LITTERS.get(field);
        if (column != null) {
            return said(family.said, column, family.row);
        }
        if (field.equals("ascertainment")) {
            return said(family.said, ofAscertainment(names), family.row);
        }
        if (field.equals("kits") && names.size() > 3) {
            return whole(family.kits.get(Integer.parseInt(names.get(3))));
        }
        if (field.equals("sires") && names.size() > 4) {
            Drafts.Candidate candidate = family.candidates.get(Integer.parseInt(names.get(4)));
            return new Cell(
                    candidate.row(),
                    headers.of(candidate.population().isEmpty() ? Column.SIRE : Column.SIRE_POPULATION));
        }
        return new Cell(family.row, headers.of(Column.LITTER));
    }

    /** What names an animal: its id, or the count of it and others. */
    private Cell whole(Drafts.Animal animal) {
        int id = headers.of(Column.ID);
        boolean counted =
                id == Headers.NONE || sheet.rows().get(animal.row).cell(id).isEmpty();
        return new Cell(animal.row, counted ? headers.of(Column.COUNT) : id);
    }

    private static Column ofAscertainment(List<String> names) {
        if (names.size() > 4 && names.get(4).equals("look")) {
            return Column.ASCERTAINMENT_SIGN;
        }
        return switch (names.get(names.size() - 1)) {
            case "count" -> Column.PROBANDS;
            case "season" -> Column.ASCERTAINMENT_SEASON;
            case "light" -> Column.ASCERTAINMENT_LIGHT;
            default -> Column.ASCERTAINMENT;
        };
    }

    private Cell said(Map<Column, Drafts.Said> said, Column column, int otherwise) {
        Drafts.Said there = said.get(column);
        return new Cell(there == null ? otherwise : there.row(), headers.of(column));
    }
}
