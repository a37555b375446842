"""The Jupyter project's own tests of a kernel, run against the installed kernel "taketally"."""

import unittest

import jupyter_kernel_test


class TaketallyKernelTests(jupyter_kernel_test.KernelTests):
    kernel_name = "taketally"
    language_name = "java"
    file_extension = ".java"
    code_hello_world = 'System.out.println("hello, world");'
    code_stderr = 'System.err.println("oops");'
    completion_samples = [
        {"text": '"scion".toUp', "matches": {"toUpperCase("}},
        {"text": "Math.sqr", "matches": {"sqrt("}},
    ]
    complete_code_samples = ["1 + 1", "int x = 3;", "for (int i = 0; i < 3; i++) { }"]
    incomplete_code_samples = ["for (int i = 0;", "int twice(int n) {", "1 +"]
    invalid_code_samples = ["int = = 3;", "}", "else { }"]
    code_page_something = "Math?"
    code_generate_error = 'throw new IllegalStateException("on purpose");'
    code_execute_result = [
        {"code": "6 * 7", "result": "42"},
        {"code": '"sci" + "on"', "result": "scion"},
        {"code": 'html("<b>bud</b>")', "mime": "text/html", "result": "<b>bud</b>"},
    ]
    code_display_data = [
        {"code": 'display(svg("<svg/>"));', "mime": "image/svg+xml"},
        {"code": 'display(html("<i>x</i>"));', "mime": "text/html"},
    ]
    code_history_pattern = "6 * ?"
    supported_history_operations = ("tail", "range", "search")
    code_inspect_sample = "Math.max"
    code_clear_output = "clear();"


if __name__ == "__main__":
    unittest.main()
