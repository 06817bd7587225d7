package org.geneticsrules.pedigree;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Kinship by other means, sharing no code with the library: every assignment of sires to litters and kits is listed, and each is a plain
 * list of who comes from whom, for which the table is filled in (tabular method) or alleles are dropped in every possible way.
 */
final class Twin {

    /** A kit with its parents, which stand before it; null for a founder. */
    record Line(String id, String dam, String sire) {}

    /** One assignment of sires, with its weight among the weights of all. */
    record World(List<Line> lines, BigDecimal weight) {}

    private Twin() {}

    /** Every assignment of sires; weights are whole numbers over a common total. */
    static List<World> worlds(Pedigree pedigree) {
        List<World> worlds = List.of(new World(List.of(), BigDecimal.ONE));
        List<String> done = new ArrayList<>();
        for (String id : pedigree.order()) {
            if (done.contains(id)) {
                continue;
            }
            Litter litter = pedigree.litterOf(id).orElse(null);
            if (litter == null) {
                done.add(id);
                worlds = extended(worlds, List.of(List.of(new Line(id, null, null))), List.of(BigDecimal.ONE));
                continue;
            }
            done.addAll(litter.kits());
            String dam = litter.dam().orElse(litter.id() + " dam");
            List<Line> strangers = new ArrayList<>();
            if (litter.dam().isEmpty()) {
                strangers.add(new Line(dam, null, null));
            }
            List<String> sires = new ArrayList<>();
            List<BigDecimal> weights = new ArrayList<>();
            boolean perKit = false;
            if (litter.sires() instanceof Paternity.Known known) {
                sires.add(known.sire());
                weights.add(BigDecimal.ONE);
            } else if (litter.sires() instanceof Paternity.Candidates several) {
                perKit = several.perKit();
                for (Paternity.Candidate candidate : several.candidates()) {
                    String sire = candidate.male().orElse(litter.id() + " stranger");
                    if (candidate.male().isEmpty()) {
                        strangers.add(new Line(sire, null, null));
                    }
                    sires.add(sire);
                    // All shares in these pedigrees divide 2520.
                    weights.add(new BigDecimal(candidate.share().numerator())
                            .multiply(BigDecimal.valueOf(2520))
                            .divide(new BigDecimal(candidate.share().denominator())));
                }
            } else {
                sires.add(litter.id() + " sire");
                strangers.add(new Line(litter.id() + " sire", null, null));
                weights.add(BigDecimal.ONE);
            }
            worlds = extended(worlds, List.of(strangers), List.of(BigDecimal.ONE));
            if (perKit) {
                for (String kit : litter.kits()) {
                    worlds = extended(
                            worlds,
                            sires.stream()
                                    .map(sire -> List.of(new Line(kit, dam, sire)))
                                    .toList(),
                            weights);
                }
            } else {
                worlds = extended(
                        worlds,
                        sires.stream()
                                .map(sire -> litter.kits().stream()
                                        .map(kit -> new Line(kit, dam, sire))
                                        .toList())
                                .toList(),
                        weights);
            }
        }
        return worlds;
    }

    private static List<World> extended(List<World> worlds, List<List<Line>> ways, List<BigDecimal> weights) {
        List<World> longer = new ArrayList<>();
        for (World world : worlds) {
            for (int i = 0; i < ways.size(); i++) {
                List<Line> lines = new ArrayList<>(world.lines);
                lines.addAll(ways.get(i));
                longer.add(new World(lines, world.weight.multiply(weights.get(i))));
            }
        }
        return longer;
    }

    /** The numerator relationship matrix, row by row (Emik and Terrill 1949, from memory). */
    static Map<String, Map<String, BigDecimal>> table(List<Line> lines) {
        BigDecimal half = new BigDecimal("0.5");
        Map<String, Map<String, BigDecimal>> table = new HashMap<>();
        for (Line line : lines) {
            Map<String, BigDecimal> row = new HashMap<>();
            for (String earlier : table.keySet()) {
                BigDecimal value = line.dam == null
                        ? BigDecimal.ZERO
                        : half.multiply(table.get(line.dam)
                                .get(earlier)
                                .add(table.get(line.sire).get(earlier)));
                row.put(earlier, value);
                table.get(earlier).put(line.id, value);
            }
            row.put(
                    line.id,
                    line.dam == null
                            ? BigDecimal.ONE
                            : BigDecimal.ONE.add(
                                    half.multiply(table.get(line.dam).get(line.sire))));
            table.put(line.id, row);
        }
        return table;
    }

    /** The kinship of two, by dropping the founders' alleles in each of the 4^kits ways and drawing one allele of each. */
    static BigDecimal dropped(List<Line> lines, String one, String other) {
        return drop(lines, 0, new HashMap<>(), one, other);
    }

    private static BigDecimal drop(List<Line> lines, int at, Map<String, int[]> alleles, String one, String other) {
        if (at == lines.size()) {
            int same = 0;
            for (int mine : alleles.get(one)) {
                for (int theirs : alleles.get(other)) {
                    same += mine == theirs ? 1 : 0;
                }
            }
            return BigDecimal.valueOf(same).divide(BigDecimal.valueOf(4));
        }
        Line line = lines.get(at);
        if (line.dam == null) {
            alleles.put(line.id, new int[] {2 * at, 2 * at + 1});
            return drop(lines, at + 1, alleles, one, other);
        }
        BigDecimal sum = BigDecimal.ZERO;
        for (int way = 0; way < 4; way++) {
            alleles.put(line.id, new int[] {alleles.get(line.dam)[way / 2], alleles.get(line.sire)[way % 2]});
            sum = sum.add(drop(lines, at + 1, alleles, one, other));
        }
        return sum.divide(BigDecimal.valueOf(4));
    }
}
