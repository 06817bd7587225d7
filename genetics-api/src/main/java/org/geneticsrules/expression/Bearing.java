package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.geneticsrules.trait.Sex;

/**
 * What the look of one trait rests on, animal by animal: the cases and masks whose content decides it, and the loci whose expression
 * does.
 *
 * <p>In each animal these are enough for its look, whatever all other cases and masks say, and whatever all other loci show; and none
 * of them can be spared there. Obtained from {@link CompiledModel#bearing}. Immutable and thread-safe.
 */
public final class Bearing {

    private final ImmutableList<Level> levels;
    private final ImmutableMap<String, CompactNodes> statements;
    private final ImmutableMap<String, CompactNodes> loci;

    /**
     * Makes one.
     *
     * @param levels what the diagrams test
     * @param statements by pointer of a case or mask, the diagram that ends in leaf 1 for animals whose look rests on it
     * @param loci the same by id of a locus
     */
    Bearing(List<Level> levels, Map<String, CompactNodes> statements, Map<String, CompactNodes> loci) {
        this.levels = ImmutableList.copyOf(levels);
        this.statements = ImmutableMap.copyOf(statements);
        this.loci = ImmutableMap.copyOf(loci);
    }

    /**
     * What the looks of some animals rest on.
     *
     * @param statements pointers of cases and masks
     * @param loci by locus, the expressions without which an animal that shows them would look different
     */
    public record Found(Set<String> statements, Map<String, Set<String>> loci) {}

    /**
     * Returns what the looks of animals rest on that may show some expressions in any combination, whatever chance decides.
     *
     * @param sex their sex
     * @param expressions what they may show, at least at each locus that the trait depends on; nothing at one of them means that there is
     *     no such animal
     * @return statements and loci
     */
    public Found in(Sex sex, Map<String, ? extends Set<String>> expressions) {
        boolean[][] allowed = new boolean[levels.size()][];
        boolean exists = true;
        for (int level = 0; level < allowed.length; level++) {
            Level tested = levels.get(level);
            allowed[level] = new boolean[tested.values().size()];
            boolean any = false;
            for (int value = 0; value < allowed[level].length; value++) {
                allowed[level][value] = allows(tested, tested.values().get(value), sex, expressions);
                any |= allowed[level][value];
            }
            exists &= any;
        }
        Set<String> found = new LinkedHashSet<>();
        Map<String, Set<String>> shown = new LinkedHashMap<>();
        if (exists) {
            statements.forEach((pointer, where) -> {
                if (reaches(where, allowed)) {
                    found.add(pointer);
                }
            });
            for (int level = 0; level < allowed.length; level++) {
                if (levels.get(level) instanceof Level.OfLocus at && loci.containsKey(at.name())) {
                    shown(at, level, allowed, shown);
                }
            }
        }
        return new Found(found, shown);
    }

    private static boolean allows(Level level, String value, Sex sex, Map<String, ? extends Set<String>> expressions) {
        if (level instanceof Level.OfLocus at) {
            Set<String> shown = expressions.get(at.name());
            if (shown == null) {
                throw new IllegalArgumentException(
                        "the expressions " + expressions + " do not say what locus " + at.name() + " shows");
            }
            return shown.contains(value);
        }
        return !(level instanceof Level.OfSex) || value.equals(sex.word());
    }

    private void shown(Level.OfLocus at, int level, boolean[][] allowed, Map<String, Set<String>> shown) {
        boolean[] before = allowed[level];
        CompactNodes where = Objects.requireNonNull(loci.get(at.name()));
        if (!reaches(where, allowed)) {
            return;
        }
        Set<String> matter = new LinkedHashSet<>();
        for (int value = 0; value < before.length; value++) {
            if (before[value]) {
                allowed[level] = new boolean[before.length];
                allowed[level][value] = true;
                if (reaches(where, allowed)) {
                    matter.add(at.values().get(value));
                }
            }
        }
        allowed[level] = before;
        shown.put(at.name(), matter);
    }

    /** Whether some way through allowed values ends in leaf 1. */
    private static boolean reaches(CompactNodes nodes, boolean[][] allowed) {
        BitSet reached = new BitSet();
        reached.set(nodes.root());
        for (int place = reached.nextSetBit(0);
                place >= 0 && place < nodes.size();
                place = reached.nextSetBit(place + 1)) {
            boolean[] values = allowed[nodes.level(place)];
            for (int value = 0; value < values.length; value++) {
                if (values[value]) {
                    reached.set(nodes.target(place, value));
                }
            }
        }
        return reached.get(nodes.size() + 1);
    }
}
