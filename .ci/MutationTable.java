import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.TreeMap;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/**
 * Writes the figures of mutation testing from the reports of the profile {@code mutation}:
 *
 * <pre>java .ci/MutationTable.java genetics-api/mutation-reasons.properties genetics-api/target/mutation/PACKAGE/mutations.xml .. >
 * genetics-api/MUTATION.md</pre>
 *
 * <p>Packages that are in no report keep their figures if the earlier file is named among the reports.
 *
 * <p>A class that stands in several reports counts as in the last of them, so that a package may be measured in parts.
 *
 * <p>Reasons are properties {@code Class.method = why}, or {@code *.method = why} for every class; what is changed within a lambda
 * counts for the method that holds it. A survivor without a reason is written as open.
 */
final class MutationTable {

    private MutationTable() {}

    public static void main(String[] args) throws Exception {
        Properties reasons = new Properties();
        try (InputStream in = Files.newInputStream(Path.of(args[0]))) {
            reasons.load(in);
        }
        Map<String, List<Element>> mutations = new TreeMap<>();
        List<String> earlier = new ArrayList<>();
        for (int i = 1; i < args.length; i++) {
            Path path = Path.of(args[i]);
            if (args[i].endsWith(".md")) {
                earlier.addAll(Files.readAllLines(path));
            } else {
                mutations.putAll(byClass(path));
            }
        }
        Map<String, int[]> counts = new TreeMap<>();
        Map<String, Map<String, Integer>> survivors = new TreeMap<>();
        mutations.forEach((name, all) -> {
            int[] count = counts.computeIfAbsent(name.substring(0, name.indexOf('.')), key -> new int[3]);
            for (Element mutation : all) {
                String status = mutation.getAttribute("status");
                count[0]++;
                count[1] += status.equals("KILLED") ? 1 : 0;
                count[2] += status.equals("TIMED_OUT") ? 1 : 0;
                if (!status.equals("KILLED") && !status.equals("TIMED_OUT")) {
                    String where = name + "."
                            + text(mutation, "mutatedMethod").replaceFirst("^lambda\\$(.*)\\$\\d+$", "$1");
                    String what = text(mutation, "description")
                                    .replaceFirst(" for org/geneticsrules/.*", "")
                                    .replace("org/geneticsrules/", "")
                            + (status.equals("NO_COVERAGE") ? " (not run by any test)" : "");
                    survivors.computeIfAbsent(where, key -> new LinkedHashMap<>()).merge(what, 1, Integer::sum);
                }
            }
        });
        System.out.println("# Mutation testing\n\nAs measured by the profile `mutation` (see DEVELOPERS.md), each package"
                + " by its own tests and the tables of wrong documents.\nThis file is written by `.ci/MutationTable.java` from the reports.\n");
        System.out.println("| package | mutants | killed | by time | share |\n|---|---|---|---|---|");
        Map<String, String> figures = new TreeMap<>();
        kept(earlier, "`", counts).forEach(row -> figures.put(row, row));
        counts.forEach((name, count) -> figures.put(
                "| `" + name + "`",
                "| `%s` | %d | %d | %d | %d %% |"
                        .formatted(name, count[0], count[1], count[2], 100 * (count[1] + count[2]) / count[0])));
        figures.values().forEach(System.out::println);
        System.out.println("\n## Survivors\n\n| where | what | why |\n|---|---|---|");
        Map<String, List<String>> rows = new TreeMap<>();
        kept(earlier, ".", counts)
                .forEach(row -> rows.computeIfAbsent(row.split("`")[1], key -> new ArrayList<>()).add(row));
        survivors.forEach((where, whats) -> whats.forEach((what, times) -> rows.computeIfAbsent(
                        where, key -> new ArrayList<>())
                .add("| `%s` | %s%s | %s |"
                        .formatted(where, what, times > 1 ? " (" + times + " times)" : "", why(reasons, where)))));
        rows.values().forEach(all -> all.forEach(System.out::println));
    }

    /** Rows of an earlier file whose first cell is a package, or begins with one, that is not measured now. */
    private static List<String> kept(List<String> earlier, String end, Map<String, int[]> measured) {
        return earlier.stream()
                .filter(row -> row.matches("\\| `[a-z]+" + Pattern.quote(end) + ".*"))
                .filter(row -> !measured.containsKey(row.substring(3, row.indexOf(end, 3))))
                .toList();
    }

    /** What was changed in each class of a report. */
    private static Map<String, List<Element>> byClass(Path report) throws Exception {
        NodeList all = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(report.toFile())
                .getElementsByTagName("mutation");
        Map<String, List<Element>> found = new TreeMap<>();
        for (int i = 0; i < all.getLength(); i++) {
            Element mutation = (Element) all.item(i);
            String name = text(mutation, "mutatedClass").replace("org.geneticsrules.", "");
            found.computeIfAbsent(name, key -> new ArrayList<>()).add(mutation);
        }
        return found;
    }

    private static String why(Properties reasons, String where) {
        String anywhere = "*" + where.substring(where.lastIndexOf('.'));
        return reasons.getProperty(where, reasons.getProperty(anywhere, "open"));
    }

    private static String text(Element parent, String name) {
        return parent.getElementsByTagName(name).item(0).getTextContent();
    }
}
